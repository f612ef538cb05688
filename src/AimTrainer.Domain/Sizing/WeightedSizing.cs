namespace AimTrainer.Domain;

/// <summary>
/// One hit narrower, one miss wider, in log width, with steps in the ratio that makes the long-run hit rate the goal (75 % is
/// 3 to 1).
/// </summary>
/// <param name="GoalHitRate">More than 0, less than 1.</param>
/// <param name="NarrowerOctaves">The step after a hit, in octaves of width, more than 0: 1 halves it.</param>
/// <remarks>
/// Source: Kaernbach, "Simple adaptive testing with the weighted up-down method", Perception and Psychophysics 49 (1991), 227-229.
/// </remarks>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record WeightedSizing(double GoalHitRate, double NarrowerOctaves) : Sizing
{
    /// <summary>The hit rate that the rule settles at.</summary>
    public double GoalHitRate { get; } = Guard.Share(GoalHitRate);

    /// <summary>The step after a hit, in octaves.</summary>
    public double NarrowerOctaves { get; } = Guard.Positive(NarrowerOctaves);

    /// <summary>The step after a miss, in octaves: <c>NarrowerOctaves * p / (1 - p)</c>.</summary>
    public double WiderOctaves => NarrowerOctaves * StepRatio(GoalHitRate);

    /// <summary>How many times as far a miss widens as a hit narrows, so that the long-run hit rate is the goal.</summary>
    /// <param name="goalHitRate">More than 0, less than 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public static double StepRatio(double goalHitRate) => Guard.Share(goalHitRate) / (1 - goalHitRate);

    /// <inheritdoc/>
    /// <param name="width">Any width, taken into the limits; null for the middle of the limits in log width.</param>
    public override SizingState Start(BoardOffset? width) => At(Math.Log2(Clamped(width?.Boards ?? MiddleBoards)));

    /// <inheritdoc/>
    public override SizingState After(SizingState state, SizedShot shot) =>
        At(Own<WeightedState>(state).Log2Boards + (shot.Held ? -NarrowerOctaves : WiderOctaves));

    /// <inheritdoc/>
    public override SizingState SetByHand(SizingState state, BoardOffset width)
    {
        Own<WeightedState>(state);
        return Start(width);
    }

    private WeightedState At(double log2Boards)
    {
        var within = Math.Clamp(log2Boards, Math.Log2(Narrowest.Boards), Math.Log2(Widest.Boards));
        return new WeightedState(Shown(Math.Pow(2, within)), within);
    }
}
