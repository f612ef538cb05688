namespace AimTrainer.Reports;

/// <summary>A comparison, or why there is none.</summary>
/// <param name="Report">The comparison; null when there is none.</param>
/// <param name="Problem">Why, and what to do; null when there is one.</param>
public sealed record BallsAnswer(BallsReport? Report, string? Problem);
