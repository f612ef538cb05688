namespace AimTrainer.Web;

/// <summary>A phone that is paired, or a projector that was let in.</summary>
/// <param name="Id">The pairing.</param>
/// <param name="Role">Which of them.</param>
/// <param name="Station">Its station.</param>
/// <param name="Since">Since when.</param>
/// <param name="Until">Until when.</param>
public sealed record Pairing(string Id, Role Role, int Station, DateTimeOffset Since, DateTimeOffset Until);
