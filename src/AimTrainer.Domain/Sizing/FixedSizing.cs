namespace AimTrainer.Domain;

/// <summary>The width stays as it is.</summary>
public sealed record FixedSizing : Sizing
{
    /// <inheritdoc/>
    /// <param name="width">The width: this rule cannot choose one.</param>
    /// <exception cref="ArgumentException">No width was given.</exception>
    public override SizingState Start(BoardOffset? width) =>
        new State(Clamped(width ?? throw new ArgumentException(
            "found no width; allowed: a width in boards, for this rule changes none and so chooses none",
            nameof(width))));

    /// <inheritdoc/>
    public override SizingState After(SizingState state, SizedShot shot) => Own<State>(state);

    /// <inheritdoc/>
    public override SizingState SetByHand(SizingState state, BoardOffset width) => Own<State>(state) with { Width = Clamped(width) };

    private sealed record State(BoardOffset Width) : SizingState(Width);
}
