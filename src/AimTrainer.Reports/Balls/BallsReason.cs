namespace AimTrainer.Reports;

/// <summary>Why a throw is left out.</summary>
/// <param name="Measure">The only measure of which it is left out; null when it is left out of all.</param>
/// <param name="Reason">Why.</param>
public sealed record BallsReason(string? Measure, string Reason);
