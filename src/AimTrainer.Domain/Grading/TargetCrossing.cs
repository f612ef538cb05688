namespace AimTrainer.Domain;

/// <summary>Where a ball crossed a target's distance, and how that is known.</summary>
/// <param name="Kind">How it is known.</param>
/// <param name="Board">The board, to 0.01; null when unknown.</param>
public readonly record struct TargetCrossing(CrossingKind Kind, Board? Board)
{
    /// <summary>A crossing nobody measured.</summary>
    public static TargetCrossing Unknown { get; } = new(CrossingKind.Unknown, null);
}
