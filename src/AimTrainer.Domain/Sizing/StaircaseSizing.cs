namespace AimTrainer.Domain;

/// <summary>Narrower after some hits in a row, wider after some misses in a row.</summary>
/// <param name="HitsToNarrow">Hits in a row that narrow the target by one step, 1 or more.</param>
/// <param name="MissesToWiden">Misses in a row that widen it by one step, 1 or more.</param>
/// <param name="Step">How far one step goes.</param>
/// <param name="ReversalsForThreshold">How many of the last reversals the threshold is the mean of, 2 to 100.</param>
/// <remarks>
/// The runs start anew after each step (taken, or stopped by a limit) and with each change from hits to misses or back.
/// With n hits to narrow and one miss to widen it settles where <c>p^n = 1/2</c>. Source: Levitt, "Transformed up-down methods in
/// psychoacoustics", Journal of the Acoustical Society of America 49 (1971), 467-477.
/// </remarks>
/// <exception cref="ArgumentException">A value is outside its range.</exception>
public sealed record StaircaseSizing(int HitsToNarrow, int MissesToWiden, StaircaseStep Step, int ReversalsForThreshold) : Sizing
{
    private const int FewestReversals = 2, MostReversals = 100;

    /// <summary>Hits in a row that narrow.</summary>
    public int HitsToNarrow { get; } = Guard.InRange(HitsToNarrow, 1, int.MaxValue);

    /// <summary>Misses in a row that widen.</summary>
    public int MissesToWiden { get; } = Guard.InRange(MissesToWiden, 1, int.MaxValue);

    /// <summary>How far one step goes.</summary>
    public StaircaseStep Step { get; } = Step ?? throw new ArgumentNullException(nameof(Step));

    /// <summary>How many of the last reversals the threshold is the mean of.</summary>
    public int ReversalsForThreshold { get; } = Guard.InRange(ReversalsForThreshold, FewestReversals, MostReversals);

    /// <summary>The hit rate at which a staircase settles that narrows after some hits in a row and widens after one miss.</summary>
    /// <param name="hitsToNarrow">1 or more.</param>
    /// <returns><c>0.5^(1/n)</c>: 50 %, 70.71 %, 79.37 %, 84.09 % for 1 to 4. Bigger steps settle a little away from it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1.</exception>
    public static double HitRateWhenOneMissWidens(int hitsToNarrow) => Math.Pow(0.5, 1.0 / Guard.InRange(hitsToNarrow, 1, int.MaxValue));

    /// <inheritdoc/>
    /// <param name="width">Any width, taken into the limits; null for the middle of the limits in log width.</param>
    public override SizingState Start(BoardOffset? width)
    {
        var boards = Clamped(width?.Boards ?? MiddleBoards);
        return new StaircaseState(Shown(boards), boards, ValueList<double>.Empty);
    }

    /// <inheritdoc/>
    public override SizingState After(SizingState state, SizedShot shot)
    {
        var now = Own<StaircaseState>(state);
        var run = shot.Held ? Math.Max(now.Run, 0) + 1 : Math.Min(now.Run, 0) - 1;
        var direction = run >= HitsToNarrow ? -1 : run <= -MissesToWiden ? 1 : 0;
        if (direction == 0)
        {
            return now with { Run = run };
        }

        var boards = Clamped(Stepped(now.ExactBoards, direction));
        if (boards == now.ExactBoards)
        {
            return now with { Run = 0 };
        }

        var next = now with { Width = Shown(boards), ExactBoards = boards, Run = 0, Direction = direction };
        if (direction != -now.Direction)
        {
            return next;
        }

        var reversals = WithReversal(now);
        return next with { Reversals = reversals, Turned = ThresholdOf(reversals) };
    }

    /// <inheritdoc/>
    /// <remarks>The reversals so far are kept; the jump itself is none, and the next step cannot be one.</remarks>
    public override SizingState SetByHand(SizingState state, BoardOffset width)
    {
        var boards = Clamped(width.Boards);
        return Own<StaircaseState>(state) with { Width = Shown(boards), ExactBoards = boards, Run = 0, Direction = 0 };
    }

    private double Stepped(double boards, int direction) => Step switch
    {
        StaircaseStep.ByBoards by => boards + (direction * by.Boards.Boards),
        StaircaseStep.ByFactor by => direction > 0 ? boards * by.Factor : boards / by.Factor,
        _ => throw new InvalidOperationException($"A staircase cannot step by {Step.GetType().Name}."),
    };

    private ValueList<double> WithReversal(StaircaseState now) =>
        ValueList.Create<double>([.. now.Reversals.AsSpan()[Math.Max(0, now.Reversals.Count + 1 - ReversalsForThreshold)..], now.ExactBoards]);

    private Threshold? ThresholdOf(ValueList<double> reversals)
    {
        if (reversals.Count < FewestReversals)
        {
            return null;
        }

        var byFactor = Step is StaircaseStep.ByFactor;
        var sum = 0.0;
        foreach (var level in reversals)
        {
            sum += byFactor ? Math.Log(level) : level;
        }

        var mean = sum / reversals.Count;
        return new Threshold(byFactor ? Math.Exp(mean) : mean, reversals.Count);
    }
}
