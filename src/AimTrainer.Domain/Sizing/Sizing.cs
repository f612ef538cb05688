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

    /// <summary>The width never goes below this: 0.5 to 20 boards, as any target.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No target may be that wide.</exception>
    public BoardOffset Narrowest { get; init => field = AllowedForTarget(value, nameof(Narrowest)); } = DefaultNarrowest;

    /// <summary>The width never goes above this: 0.5 to 20 boards, as any target, and not below <see cref="Narrowest"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No target may be that wide.</exception>
    public BoardOffset Widest { get; init => field = AllowedForTarget(value, nameof(Widest)); } = DefaultWidest;

    /// <summary>The state before the first shot.</summary>
    /// <param name="width">The width that the drill starts with; null lets the rule choose.</param>
    /// <exception cref="ArgumentException">The rule cannot start with this width, or its limits are the wrong way round.</exception>
    public abstract SizingState Start(BoardOffset? width);

    /// <summary>The state after a shot that counts.</summary>
    /// <exception cref="ArgumentException">The state is another rule's.</exception>
    public abstract SizingState After(SizingState state, SizedShot shot);

    /// <summary>The state after somebody set the width by hand: the rule goes on from there.</summary>
    /// <exception cref="ArgumentException">The state is another rule's.</exception>
    public abstract SizingState SetByHand(SizingState state, BoardOffset width);

    /// <summary>A width within the limits.</summary>
    /// <exception cref="ArgumentException">The limits are the wrong way round.</exception>
    protected BoardOffset Clamped(BoardOffset width)
    {
        ThrowIfLimitsCross();
        return width.Clamp(Narrowest, Widest);
    }

    /// <summary>A width worked out in full, within the limits.</summary>
    /// <exception cref="ArgumentException">The limits are the wrong way round.</exception>
    protected double Clamped(double boards)
    {
        ThrowIfLimitsCross();
        return Math.Clamp(boards, Narrowest.Boards, Widest.Boards);
    }

    /// <summary>A width worked out in full as it is shown: rounded to 0.01 board (ties to even), then within the limits.</summary>
    /// <exception cref="ArgumentException">The limits are the wrong way round.</exception>
    protected BoardOffset Shown(double boards) => Clamped(BoardOffset.FromTenThousandths((int)Math.Round(Clamped(boards) * 100) * 100));

    /// <summary>The middle of the limits in log width, where a rule starts that is told no width: 3 boards of 1 to 9.</summary>
    protected double MiddleBoards => Math.Sqrt(Narrowest.Boards * Widest.Boards);

    /// <summary>The state, if it is of this rule.</summary>
    /// <typeparam name="T">The rule's own state.</typeparam>
    /// <exception cref="ArgumentException">It is another rule's.</exception>
    protected static T Own<T>(SizingState state)
        where T : SizingState =>
        state as T ?? throw new ArgumentException(
            $"found the state {state?.GetType().Name ?? "null"}; allowed: one that this rule gave, {typeof(T).Name}",
            nameof(state));

    private static BoardOffset AllowedForTarget(BoardOffset width, string name)
    {
        FixedPoint.InRange(width.Boards, Target.Narrowest, Target.Widest, name);
        return width;
    }

    // The two are set one after the other, so that only a use can see that they do not fit.
    private void ThrowIfLimitsCross()
    {
        if (Narrowest > Widest)
        {
            throw new ArgumentException(
                $"found a narrowest width of {Narrowest} boards and a widest of {Widest}; allowed: a widest that is not below the narrowest");
        }
    }
}
