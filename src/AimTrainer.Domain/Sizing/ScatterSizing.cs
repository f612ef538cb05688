namespace AimTrainer.Domain;

/// <summary>
/// The width at which the bowler's predicted hit rate equals the goal, from a normal-inverse-gamma posterior of bias and spread
/// with forgetting; shown rounded to half a board, at most 20 % different from the last one.
/// </summary>
/// <param name="GoalHitRate">Between 0 and 1; 0.75 unless the drill says otherwise.</param>
/// <param name="Keep">What each shot's weight is multiplied by when the next one comes; 0.98 unless the drill says otherwise.</param>
/// <param name="PriorSpread">The spread (standard deviation) expected of a bowler who has not thrown yet.</param>
public sealed record ScatterSizing(double GoalHitRate, double Keep, BoardOffset PriorSpread) : Sizing
{
    /// <inheritdoc/>
    public override SizingState Start(BoardOffset? width) => throw new NotImplementedException();

    /// <inheritdoc/>
    public override SizingState After(SizingState state, SizedShot shot) => throw new NotImplementedException();

    /// <inheritdoc/>
    public override SizingState SetByHand(SizingState state, BoardOffset width) => throw new NotImplementedException();
}
