namespace AimTrainer.Web;

/// <summary>A phone that is paired.</summary>
/// <param name="Id">The pairing.</param>
/// <param name="Station">Its station.</param>
/// <param name="Since">Since when.</param>
/// <param name="Until">Until when.</param>
public sealed record Pairing(string Id, int Station, DateTimeOffset Since, DateTimeOffset Until);
