namespace AimTrainer.Store;

/// <summary>A drill as it was used.</summary>
/// <param name="Hash">SHA-256 of its bytes, lower-case hex.</param>
/// <param name="DrillId">Its id.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Json">The bytes as text.</param>
public sealed record DeliveredDrill(string Hash, string DrillId, string Name, string Json);
