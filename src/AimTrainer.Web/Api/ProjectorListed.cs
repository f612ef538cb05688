namespace AimTrainer.Web;

/// <summary>A projector that is being calibrated and can be set up from a page.</summary>
/// <param name="Station">The station whose lane it is.</param>
/// <param name="Projector">Its name.</param>
/// <param name="Since">Since when.</param>
/// <param name="Version">Counts the changes of its state.</param>
public sealed record ProjectorListed(int Station, string Projector, DateTimeOffset Since, long Version);
