namespace AimTrainer.Analysis;

/// <summary>A grouping that cannot be had.</summary>
/// <param name="By">Which.</param>
/// <param name="Why">Why not.</param>
public sealed record UnknownGrouping(Grouping By, string Why);
