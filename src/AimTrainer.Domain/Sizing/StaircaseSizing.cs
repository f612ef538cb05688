namespace AimTrainer.Domain;

/// <summary>Narrower after some hits in a row, wider after some misses in a row.</summary>
/// <param name="HitsToNarrow">Hits in a row that narrow the target by one step.</param>
/// <param name="MissesToWiden">Misses in a row that widen it by one step.</param>
/// <param name="Step">How far one step goes.</param>
/// <param name="ReversalsForThreshold">How many of the last reversals the threshold is the mean of.</param>
public sealed record StaircaseSizing(int HitsToNarrow, int MissesToWiden, StaircaseStep Step, int ReversalsForThreshold) : Sizing
{
    /// <inheritdoc/>
    public override SizingState Start(BoardOffset? width) => throw new NotImplementedException();

    /// <inheritdoc/>
    public override SizingState After(SizingState state, SizedShot shot) => throw new NotImplementedException();

    /// <inheritdoc/>
    public override SizingState SetByHand(SizingState state, BoardOffset width) => throw new NotImplementedException();
}
