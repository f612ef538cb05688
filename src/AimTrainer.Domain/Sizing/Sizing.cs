namespace AimTrainer.Domain;

/// <summary>
/// How the width of one target changes from shot to shot. A rule is data and pure arithmetic: its state goes in and comes out.
/// </summary>
/// <remarks>The shown width, <see cref="SizingState.Width"/>, always lies within <see cref="Narrowest"/> and <see cref="Widest"/>.</remarks>
public abstract record Sizing
{
    /// <summary>Limits of the width when a drill gives none: 1 to 9 boards.</summary>
    public static BoardOffset DefaultNarrowest { get; } = BoardOffset.FromBoards(1);

    /// <inheritdoc cref="DefaultNarrowest"/>
    public static BoardOffset DefaultWidest { get; } = BoardOffset.FromBoards(9);

    /// <summary>The width never goes below this.</summary>
    public BoardOffset Narrowest { get; init; } = DefaultNarrowest;

    /// <summary>The width never goes above this.</summary>
    public BoardOffset Widest { get; init; } = DefaultWidest;

    /// <summary>The state before the first shot.</summary>
    /// <param name="width">The width that the drill starts with; null lets the rule choose.</param>
    public abstract SizingState Start(BoardOffset? width);

    /// <summary>The state after a shot that counts.</summary>
    public abstract SizingState After(SizingState state, SizedShot shot);

    /// <summary>The state after somebody set the width by hand: the rule goes on from there.</summary>
    public abstract SizingState SetByHand(SizingState state, BoardOffset width);

    /// <summary>A width within the limits.</summary>
    protected BoardOffset Clamped(BoardOffset width) => width.Clamp(Narrowest, Widest);
}
