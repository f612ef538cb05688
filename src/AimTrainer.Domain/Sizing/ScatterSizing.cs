namespace AimTrainer.Domain;

/// <summary>
/// The width at which the bowler's predicted hit rate equals the goal, from a normal-inverse-gamma posterior of bias and spread
/// with forgetting; shown rounded to half a board, at most 20 % different from the last one (or half a board, where that is more).
/// </summary>
/// <param name="GoalHitRate">More than 0, less than 1; 0.75 unless the drill says otherwise.</param>
/// <param name="Keep">
/// What each shot's weight is multiplied by when the next one comes, more than 0, at most 1; 0.98 unless the drill says otherwise.
/// </param>
/// <param name="PriorSpread">The spread (standard deviation) expected of a bowler who has not thrown yet, more than 0.</param>
/// <remarks>
/// <para>
/// A gross miss (modified z over 3.5 against at least 8 kept misses) is flagged and left out of the width. Three in a row are no
/// accident but a change (another line, another ball): the third is taken in, and what is gross is judged afresh from there.
/// </para>
/// <para>Source: reference statistics.md sections 2.5, 2.6, 8 and 10; the three in a row and the window of 60 are ours.</para>
/// </remarks>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record ScatterSizing(double GoalHitRate, double Keep, BoardOffset PriorSpread) : Sizing
{
    // As many as forgetting at 0.98 lets count, and a bound on the work of one shot.
    private const int KeptMisses = 60;

    private const int GrossInARowIsAChange = 3;

    // A reading to whole boards ties more than half of a good bowler's misses.
    private const double HalfStepOfWholeBoards = 0.5;

    private const double MostChange = 0.2;

    // In ten-thousandths of a board.
    private const int HalfBoard = 5_000;

    /// <summary>The hit rate that the width is made for.</summary>
    public double GoalHitRate { get; } = Guard.Share(GoalHitRate);

    /// <summary>What each shot's weight is multiplied by when the next one comes.</summary>
    public double Keep { get; } = Keep > 0 && Keep <= 1
        ? Keep
        : throw new ArgumentOutOfRangeException(nameof(Keep), Keep, "allowed: more than 0, at most 1");

    /// <summary>The spread expected of a bowler who has not thrown yet.</summary>
    public BoardOffset PriorSpread { get; } = BoardOffset.FromBoards(Guard.Positive(PriorSpread.Boards, nameof(PriorSpread)));

    /// <inheritdoc/>
    /// <param name="width">Any width, taken into the limits and shown as it is; null for the one that the prior predicts, rounded.</param>
    public override SizingState Start(BoardOffset? width)
    {
        var posterior = ScatterPosterior.FromPrior(PriorSpread);
        if (width is { } given)
        {
            var shown = Clamped(given);
            return new ScatterState(shown, shown.Boards, posterior, ValueList<double>.Empty);
        }

        var boards = Clamped(posterior.PredictiveWidthBoards(GoalHitRate));
        return new ScatterState(Clamped(ToHalfBoard(boards)), boards, posterior, ValueList<double>.Empty);
    }

    /// <inheritdoc/>
    public override SizingState After(SizingState state, SizedShot shot)
    {
        var now = Own<ScatterState>(state);
        var miss = shot.Miss.Boards;
        var kept = now.Kept;
        if (kept.Count >= ModifiedZ.FewestValues && Math.Abs(ModifiedZ.Of(miss, kept.AsSpan(), HalfStepOfWholeBoards)) > ModifiedZ.Cut)
        {
            if (now.GrossInARow + 1 < GrossInARowIsAChange)
            {
                return now with { GrossInARow = now.GrossInARow + 1 };
            }

            kept = ValueList<double>.Empty;
        }

        var posterior = now.Posterior.Discounted(Keep).Add(miss);
        var boards = Clamped(Math.Clamp(
            posterior.PredictiveWidthBoards(GoalHitRate),
            now.ExactBoards * (1 - MostChange),
            now.ExactBoards * (1 + MostChange)));
        var shown = NoFurther(now.Width, ToHalfBoard(boards));

        // Where the shown width could not follow, the exact one waits for it: one rounds to the other at all times.
        boards = ToHalfBoard(boards) == shown ? boards : shown.Boards;
        return new ScatterState(Clamped(shown), boards, posterior, WithMiss(kept, miss));
    }

    /// <inheritdoc/>
    /// <remarks>What is known of the bowler stays; from the next shot on the width moves from here toward what that predicts.</remarks>
    public override SizingState SetByHand(SizingState state, BoardOffset width)
    {
        var shown = Clamped(width);
        return Own<ScatterState>(state) with { Width = shown, ExactBoards = shown.Boards };
    }

    // Rounding to half a board would carry a change of 20 % beyond it, so the half boards within 20 % of the last width are all there
    // is to choose from; but one step is always free, or a width of 1 or 2 boards could never change. Whole numbers, so that 20 % of
    // 7.5 boards is 1.5 and not a hair less.
    private static BoardOffset NoFurther(BoardOffset last, BoardOffset wanted)
    {
        var most = Math.Max(HalfBoard, last.TenThousandths / 5);
        var low = (last.TenThousandths - most + HalfBoard - 1) / HalfBoard * HalfBoard;
        var high = (last.TenThousandths + most) / HalfBoard * HalfBoard;
        return BoardOffset.FromTenThousandths(Math.Clamp(wanted.TenThousandths, low, high));
    }

    private static BoardOffset ToHalfBoard(double boards) => BoardOffset.FromTenThousandths((int)Math.Round(boards * 2) * HalfBoard);

    private static ValueList<double> WithMiss(ValueList<double> kept, double miss)
    {
        Span<double> misses = stackalloc double[KeptMisses];
        var older = kept.AsSpan()[Math.Max(0, kept.Count + 1 - KeptMisses)..];
        older.CopyTo(misses);
        misses[older.Length] = miss;
        return ValueList.Create<double>(misses[..(older.Length + 1)]);
    }
}
