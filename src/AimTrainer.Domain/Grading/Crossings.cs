namespace AimTrainer.Domain;

/// <summary>Finds where a shot crossed a distance.</summary>
public static class Crossings
{
    /// <summary>How near, in feet, a crossing must lie to count as measured at a target.</summary>
    public const decimal MeasuredWithinFeet = 0.5m;

    /// <summary>How far apart, in feet, two crossings may lie for a straight line to be drawn between them.</summary>
    public const decimal InterpolatedWithinFeet = 15m;

    /// <summary>
    /// Where the shot crossed <paramref name="distance"/>: measured when a crossing lies within 0.5 ft (the nearest; of two
    /// equally near the one closer to the foul line); else on the straight line between the nearest crossings on either side
    /// when these are at most 15 ft apart; else unknown. Laydown counts as a crossing at 0 ft, the breakpoint at its own
    /// distance, the entry board at 60 ft; of two at the very same distance the first in this order counts: laydown, crossing,
    /// breakpoint, entry.
    /// </summary>
    public static TargetCrossing At(Shot shot, Feet distance)
    {
        var search = new Search(distance);
        if (shot.Laydown is { } laydown)
        {
            search.Offer(new Crossing(default, laydown));
        }

        foreach (var crossing in shot.Crossings)
        {
            search.Offer(crossing);
        }

        if (shot.Breakpoint is { Distance: { } breakpointDistance } breakpoint)
        {
            search.Offer(new Crossing(breakpointDistance, breakpoint.Board));
        }

        if (shot.Entry is { } entry)
        {
            search.Offer(new Crossing(LaneProfile.HeadPin, entry));
        }

        return search.Result();
    }

    private struct Search(Feet target)
    {
        private Crossing? _before;
        private Crossing? _after;

        /// <summary>Keeps the nearest crossing on either side; one at the very distance counts as before.</summary>
        public void Offer(Crossing crossing)
        {
            if (crossing.Distance <= target)
            {
                _before = _before is { } before && before.Distance >= crossing.Distance ? before : crossing;
            }
            else
            {
                _after = _after is { } after && after.Distance <= crossing.Distance ? after : crossing;
            }
        }

        public readonly TargetCrossing Result()
        {
            var toBefore = _before?.Distance.ApartFrom(target) ?? decimal.MaxValue;
            var toAfter = _after?.Distance.ApartFrom(target) ?? decimal.MaxValue;
            if (Math.Min(toBefore, toAfter) <= MeasuredWithinFeet)
            {
                return new TargetCrossing(CrossingKind.Measured, toBefore <= toAfter ? _before!.Value.Board : _after!.Value.Board);
            }

            if (_before is not { } before || _after is not { } after || before.Distance.ApartFrom(after.Distance) > InterpolatedWithinFeet)
            {
                return TargetCrossing.Unknown;
            }

            // Decimal arithmetic, so that the same crossings give the same hundredth of a board everywhere.
            var share = toBefore / (toBefore + toAfter);
            var board = before.Board.ExactBoards + ((after.Board.ExactBoards - before.Board.ExactBoards) * share);
            return new TargetCrossing(CrossingKind.Interpolated, Board.FromMeasurement((double)board));
        }
    }
}
