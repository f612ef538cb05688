namespace AimTrainer.Domain;

/// <summary>The width stays as it is.</summary>
public sealed record FixedSizing : Sizing
{
    /// <inheritdoc/>
    public override SizingState Start(BoardOffset? width) => new State(Clamped(width ?? Widest));

    /// <inheritdoc/>
    public override SizingState After(SizingState state, SizedShot shot) => state;

    /// <inheritdoc/>
    public override SizingState SetByHand(SizingState state, BoardOffset width) => new State(Clamped(width));

    private sealed record State(BoardOffset Width) : SizingState(Width);
}
