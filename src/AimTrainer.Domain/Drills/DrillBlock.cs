namespace AimTrainer.Domain;

/// <summary>One part of a drill.</summary>
public sealed record DrillBlock
{
    /// <summary>Its name, one of a kind within the drill.</summary>
    public required string Name { get; init; }

    /// <summary>Test or training.</summary>
    public required BlockKind Kind { get; init; }

    /// <summary>What is thrown at; a walk has exactly one.</summary>
    public required ValueList<AimPlan> Aims { get; init; }

    /// <summary>Which aim comes next.</summary>
    public required Order Order { get; init; }

    /// <summary>When the block is over: whichever comes first.</summary>
    public required BlockEnd Until { get; init; }

    /// <summary>What the bowler is told, and when.</summary>
    public required Feedback Feedback { get; init; }

    /// <summary>When a throw counts as the same throw; null when any does.</summary>
    public ComparableLimits? Comparable { get; init; }

    /// <summary>How crossings are graded.</summary>
    public GradeBands Bands { get; init; } = GradeBands.Default;

    /// <summary>Whether the next target may be shown, faint, beside the current one.</summary>
    public bool ShowsNext { get; init; }
}
