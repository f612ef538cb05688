namespace AimTrainer.Domain;

/// <summary>
/// One hit narrower, one miss wider, in log width, with steps in the ratio that makes the long-run hit rate the goal (75 % is
/// 3 to 1).
/// </summary>
/// <param name="GoalHitRate">Between 0 and 1.</param>
/// <param name="NarrowerOctaves">The step after a hit, in octaves of width: 1 halves it.</param>
public sealed record WeightedSizing(double GoalHitRate, double NarrowerOctaves) : Sizing
{
    /// <inheritdoc/>
    public override SizingState Start(BoardOffset? width) => throw new NotImplementedException();

    /// <inheritdoc/>
    public override SizingState After(SizingState state, SizedShot shot) => throw new NotImplementedException();

    /// <inheritdoc/>
    public override SizingState SetByHand(SizingState state, BoardOffset width) => throw new NotImplementedException();
}
