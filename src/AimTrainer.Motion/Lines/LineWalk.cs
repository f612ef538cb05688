using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>A line for each part of the lane.</summary>
public static class LineWalk
{
    /// <summary>Lines that cross the arrows from one board to another.</summary>
    /// <param name="line">The line to start from: its farther target or its angle is kept.</param>
    /// <param name="from">First board at the arrows.</param>
    /// <param name="to">Last board at the arrows, on either side of the first.</param>
    /// <param name="by">From one line to the next, more than 0.</param>
    /// <param name="keeps">What stays.</param>
    /// <returns>The lines in the order of the walk; the last one lies on the last board.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The step is 0 or less.</exception>
    /// <exception cref="ArgumentException">The breakpoint does not lie beyond the arrows.</exception>
    public static ValueList<LinePlan> Across(LinePlan line, Board from, Board to, BoardOffset by, WalkKeeps keeps)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(by.Boards, 0, nameof(by));
        var inward = to >= from;
        var lines = new List<LinePlan>();
        for (var board = from; inward ? board < to : board > to; board = inward ? board + by : board - by)
        {
            lines.Add(At(line, board, keeps));
        }

        lines.Add(At(line, to, keeps));
        return lines.ToValueList();
    }

    /// <summary>From one arrow to another, with a line between each two: for the second to the fourth arrow boards 10, 12.5, 15, 17.5, 20.</summary>
    /// <param name="line">The line to start from.</param>
    /// <param name="fromArrow">Number of the first arrow, from the ball-hand edge.</param>
    /// <param name="toArrow">Number of the last arrow.</param>
    /// <param name="keeps">What stays.</param>
    /// <returns>The lines, or null when the lane has no such arrows.</returns>
    /// <exception cref="ArgumentException">The breakpoint does not lie beyond the arrows.</exception>
    public static ValueList<LinePlan>? Arrows(LinePlan line, int fromArrow, int toArrow, WalkKeeps keeps)
    {
        if (line.Lane.Find(MarkerKind.Arrow, fromArrow, line.Hand) is not { } first || line.Lane.Find(MarkerKind.Arrow, toArrow, line.Hand) is not { } last)
        {
            return null;
        }

        var (from, to) = (LaneProfile.BoardFor(first, line.Hand), LaneProfile.BoardFor(last, line.Hand));
        var steps = Math.Max(1, 2 * Math.Abs(toArrow - fromArrow));
        return from == to ? [At(line, from, keeps)] : Across(line, from, to, BoardOffset.FromBoards((to - from).Abs().Boards / steps), keeps);
    }

    private static LinePlan At(LinePlan line, Board arrows, WalkKeeps keeps)
    {
        var distance = line.Lane.ArrowsDistance;
        var far = keeps == WalkKeeps.Breakpoint ? line.Far : line.Far with { Board = line.Far.Board + (arrows - line.Arrows) };
        return LinePlan.Through(new Crossing(distance, arrows), far, line.Hand, line.Lane, line.LaydownDistance);
    }
}
