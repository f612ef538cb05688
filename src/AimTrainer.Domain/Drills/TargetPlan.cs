namespace AimTrainer.Domain;

/// <summary>A target as a drill describes it.</summary>
public sealed record TargetPlan
{
    /// <summary>Its name, one of a kind within the block.</summary>
    public required string Name { get; init; }

    /// <summary>Where it is.</summary>
    public required TargetPlace Place { get; init; }

    /// <summary>How wide it is at first; null lets the sizing rule choose.</summary>
    public BoardOffset? Width { get; init; }

    /// <summary>How its width changes.</summary>
    public required Sizing Sizing { get; init; }

    /// <summary>How far it moves when a walk moves the line by one board: 1 moves with it, 0 stays, 0.5 follows half way.</summary>
    public decimal WalkRatio { get; init; } = 1;
}
