namespace AimTrainer.Domain;

/// <summary>Which ball of a comparison comes next, and at which aim: pure arithmetic on <see cref="CompareState"/>.</summary>
/// <param name="order">The drill's order.</param>
/// <param name="lines">How many aims the block has.</param>
internal readonly struct CompareRule(Order.Compare order, int lines)
{
    private const int Reference = 0;

    private int Balls => order.Balls.Count;

    public CompareState Start() => new(0, 0, 0, [.. new CompareCell[lines * Balls]]);

    /// <summary>The ball that is due, from 0, and whether it is for the reference ball's check.</summary>
    public (int Ball, bool IsCheck) Due(CompareState state) => CheckIsDue(state) ? (Reference, true) : (BallAt(NextPosition(state)), false);

    /// <summary>The state after a throw; null when every aim is done.</summary>
    /// <param name="state">Before it.</param>
    /// <param name="line">The aim that it was thrown at, from 0. After a correction that may be another than the present one.</param>
    /// <param name="ball">The ball that was thrown, from 0; null when it is none of those compared.</param>
    /// <param name="good">Whether it is a good throw.</param>
    public CompareState? After(CompareState state, int line, int? ball, bool good)
    {
        if (line > state.Line)
        {
            state = AtLine(state, line);
        }

        if (ball is not { } thrown)
        {
            return state with { SinceCheck = state.SinceCheck + 1 };
        }

        var at = (line * Balls) + thrown;
        var cell = state.Cells[at];
        var cells = state.Cells.SetItem(at, new CompareCell(cell.Good + (good ? 1 : 0), cell.Throws + 1));
        var checks = CheckIsDue(state) && thrown == Reference;

        // A check takes the reference ball's turn when it has one; else it is put in, and the turn of the other waits.
        var position = state.Position;
        if (line == state.Line && !IsDone(state, line) && (!CheckIsDue(state) || checks) && BallAt(NextPosition(state)) == thrown)
        {
            position = NextPosition(state) + 1;
        }

        return OnWhenDone(state with { Cells = cells, Position = position, SinceCheck = checks ? 0 : state.SinceCheck + 1 });
    }

    /// <summary>The state when the present aim is passed over; null when it was the last.</summary>
    public CompareState? AfterSkip(CompareState state) => state.Line + 1 < lines ? OnWhenDone(AtLine(state, state.Line + 1)) : null;

    /// <summary>
    /// The state when all throws that count are counted anew; null when every aim is done by that. It never goes back to an aim that
    /// was left.
    /// </summary>
    public CompareState? Recounted(CompareState state, IEnumerable<(int Line, int? Ball, bool Good)> throws)
    {
        var fresh = Start();
        foreach (var (line, ball, good) in throws)
        {
            if (After(fresh, line, ball, good) is not { } next)
            {
                return null;
            }

            fresh = next;
        }

        return fresh.Line < state.Line ? OnWhenDone(AtLine(fresh, state.Line)) : fresh;
    }

    /// <summary>What each ball has at the present aim.</summary>
    public CompareCell Cell(CompareState state, int ball) => state.Cells[(state.Line * Balls) + ball];

    private bool CheckIsDue(CompareState state) => order.CheckEvery is { } every && state.SinceCheck >= every - 1;

    private static CompareState AtLine(CompareState state, int line) => state with { Line = line, Position = 0 };

    private CompareState? OnWhenDone(CompareState state)
    {
        while (IsDone(state, state.Line))
        {
            if (state.Line + 1 == lines)
            {
                return null;
            }

            state = AtLine(state, state.Line + 1);
        }

        return state;
    }

    private bool IsDone(CompareState state, int line)
    {
        for (var ball = 0; ball < Balls; ball++)
        {
            if (!IsDone(state.Cells[(line * Balls) + ball]))
            {
                return false;
            }
        }

        return true;
    }

    private bool IsDone(CompareCell cell) => cell.Good >= order.GoodThrows || cell.Throws >= order.MostThrows;

    /// <summary>The next place in the order whose ball is not done at the present aim; one is not, else the aim would have been left.</summary>
    private int NextPosition(CompareState state)
    {
        var position = state.Position;
        while (IsDone(state.Cells[(state.Line * Balls) + BallAt(position)]))
        {
            position++;
        }

        return position;
    }

    private int BallAt(int position)
    {
        switch (order.Throwing)
        {
            case ThrowingOrder.Alternate:
                return position % Balls;
            case ThrowingOrder.Mirrored:
                var there = position % (2 * Balls);
                return there < Balls ? there : (2 * Balls) - 1 - there;
            case ThrowingOrder.Blocks blocks:
                return position / blocks.Throws % Balls;
            default:
                throw new InvalidOperationException($"unknown order of throwing {order.Throwing}");
        }
    }
}
