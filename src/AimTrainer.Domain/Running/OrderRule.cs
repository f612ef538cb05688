namespace AimTrainer.Domain;

/// <summary>Which aim comes next: pure arithmetic on <see cref="OrderState"/>.</summary>
/// <param name="order">The drill's order.</param>
/// <param name="aims">How many aims the block has.</param>
/// <param name="places">How many places a walk has; 1 without one.</param>
/// <param name="seed">Seed for an order by chance.</param>
internal readonly struct OrderRule(Order order, int aims, int places, ulong seed)
{
    public OrderState Start() => order is Order.Compare compare
        ? new(0, 0, 1, 0, false, 0, 0, 0, new CompareRule(compare, aims).Start())
        : new(0, AimAt(0, -1, 0), 1, 0, false, 0, 0, 0);

    /// <summary>The state after a throw at the scheduled aim, or null when a walk or a comparison is done.</summary>
    /// <param name="state">Before it.</param>
    /// <param name="held">Whether the aim was held.</param>
    /// <param name="ball">In a comparison the ball that was thrown, from 0; null when it is none of those compared.</param>
    /// <param name="good">In a comparison whether it was a good throw.</param>
    public OrderState? AfterThrow(OrderState state, bool held, int? ball, bool good) => order switch
    {
        Order.Walk walk => Walked(walk, state with { ShotsHere = state.ShotsHere + 1, HoldsHere = state.HoldsHere + (held ? 1 : 0) }),
        Order.Compare compare => Compared(state, new CompareRule(compare, aims).After(state.Compare!, state.Aim, ball, good)),
        _ => AtPosition(state, state.Position + 1),
    };

    /// <summary>
    /// The state when the scheduled aim, the rest of its shots in a row, the place of a walk, or an aim of a comparison is passed
    /// over; null when a walk or a comparison is done.
    /// </summary>
    public OrderState? AfterSkip(OrderState state) => order switch
    {
        Order.Walk walk => NextPlace(walk, state),
        Order.Compare compare => Compared(state, new CompareRule(compare, aims).AfterSkip(state.Compare!)),
        Order.Blocked blocked => AtPosition(state, ((state.Position / blocked.ShotsEach) + 1) * blocked.ShotsEach),
        _ => AtPosition(state, state.Position + 1),
    };

    /// <summary>The state when the shots at a walk's present place are counted anew; null when the walk is done by that.</summary>
    public OrderState? AfterRecount(OrderState state, int shotsHere, int holdsHere) =>
        order is Order.Walk walk ? Walked(walk, state with { ShotsHere = shotsHere, HoldsHere = holdsHere }) : state;

    /// <summary>The state of a comparison when its throws are counted anew; null when it is done by that.</summary>
    public OrderState? AfterRecount(OrderState state, IEnumerable<(int Line, int? Ball, bool Good)> throws) =>
        order is Order.Compare compare ? Compared(state, new CompareRule(compare, aims).Recounted(state.Compare!, throws)) : state;

    private static OrderState? Compared(OrderState state, CompareState? next) => next is null ? null : state with { Aim = next.Line, Compare = next };

    private OrderState AtPosition(OrderState state, int position)
    {
        var aim = AimAt(position, state.Aim, state.InARow);
        return state with { Position = position, Aim = aim, InARow = aim == state.Aim ? state.InARow + 1 : 1 };
    }

    private OrderState? Walked(Order.Walk walk, OrderState here)
    {
        var moves = walk.When switch
        {
            WalkWhen.AfterShots after => here.ShotsHere >= after.Shots,
            WalkWhen.AfterHolds after => here.HoldsHere >= after.Holds,
            _ => throw new InvalidOperationException($"unknown walk rule {walk.When}"),
        };
        return moves ? NextPlace(walk, here) : here;
    }

    private OrderState? NextPlace(Order.Walk walk, OrderState state)
    {
        var atEnd = state.Backward ? state.Place == 0 : state.Place == places - 1;
        if (atEnd && walk.AtEnd == WalkEnd.Stop)
        {
            return null;
        }

        var backward = atEnd ? !state.Backward : state.Backward;
        var place = places == 1 ? 0 : state.Place + (backward ? -1 : 1);
        return state with { Place = place, Backward = backward, Visit = state.Visit + 1, ShotsHere = 0, HoldsHere = 0 };
    }

    private int AimAt(int position, int lastAim, int inARow) => order switch
    {
        Order.Blocked blocked => position / blocked.ShotsEach % aims,
        Order.Serial => position % aims,
        Order.ByChance chance => ByChance(chance, position, lastAim, inARow),
        Order.Walk => 0,
        _ => throw new InvalidOperationException($"unknown order {order}"),
    };

    private int ByChance(Order.ByChance chance, int position, int lastAim, int inARow)
    {
        if (aims == 1 || lastAim < 0 || inARow < chance.LongestRun)
        {
            return SeededRandom.Index(seed, (ulong)position, aims);
        }

        // The longest run is reached: choose evenly among the others.
        var other = SeededRandom.Index(seed, (ulong)position, aims - 1);
        return other < lastAim ? other : other + 1;
    }
}
