namespace AimTrainer.Domain;

/// <summary>What a staircase knows of one target.</summary>
public sealed record StaircaseState : SizingState
{
    internal StaircaseState(BoardOffset width, double exactBoards, ValueList<double> reversals)
        : base(width)
    {
        ExactBoards = exactBoards;
        Reversals = reversals;
    }

    /// <summary>The width before rounding, in boards, within the rule's limits: the steps are taken from here.</summary>
    public double ExactBoards { get; internal init; }

    /// <summary>The last widths in boards at which the direction changed, oldest first, as many as the threshold may use.</summary>
    public ValueList<double> Reversals { get; internal init; }

    /// <inheritdoc/>
    /// <remarks>A staircase that turns at one of its limits measures the limit, not the bowler.</remarks>
    public override Threshold? Threshold => Turned;

    internal Threshold? Turned { get; init; }

    // Hits in a row since the last step; misses in a row count down from 0.
    internal int Run { get; init; }

    // Of the last step: 1 wider, -1 narrower, 0 when there was none yet.
    internal int Direction { get; init; }
}
