namespace AimTrainer.Store;

/// <summary>A bowler of a group.</summary>
/// <param name="Bowler">The name in the center's record.</param>
/// <param name="Level">The level of the program.</param>
public sealed record DeliveredMember(string Bowler, string Level);
