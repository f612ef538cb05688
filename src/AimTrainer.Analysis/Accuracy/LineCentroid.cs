namespace AimTrainer.Analysis;

/// <summary>The mean miss of a line's shots at its two ends.</summary>
/// <param name="First">At the first target, boards, positive inside.</param>
/// <param name="Last">At the last target, boards, positive inside.</param>
public sealed record LineCentroid(double First, double Last);
