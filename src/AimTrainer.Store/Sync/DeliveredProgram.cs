namespace AimTrainer.Store;

/// <summary>A program that groups follow.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Json">The whole of it, as the center reads it.</param>
public sealed record DeliveredProgram(string Id, string Json);
