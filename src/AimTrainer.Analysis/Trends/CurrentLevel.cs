namespace AimTrainer.Analysis;

/// <summary>
/// Where a series stands at one end: the straight line through the eight sessions nearest to it, read at the last of them. Not through
/// all, since most gains come early, and a line through a bend ends beside it.
/// </summary>
/// <param name="Value">The line there.</param>
/// <param name="Limits">Its 95 % limits; null below three sessions.</param>
/// <param name="Sessions">How many sessions it rests on.</param>
public sealed record CurrentLevel(double Value, TrendLimits? Limits, int Sessions)
{
    /// <summary>At most so many sessions.</summary>
    public const int MostSessions = 8;

    /// <summary>Where a series stands now; null without a point.</summary>
    /// <exception cref="ArgumentException">A number is not finite, or the sessions do not grow.</exception>
    public static CurrentLevel? AtEnd(IReadOnlyList<TrendPoint> points) => Of([.. points.TakeLast(MostSessions)], points.Count - 1, points);

    /// <summary>Where a series began; null without a point.</summary>
    /// <exception cref="ArgumentException">A number is not finite, or the sessions do not grow.</exception>
    public static CurrentLevel? AtStart(IReadOnlyList<TrendPoint> points) => Of([.. points.Take(MostSessions)], 0, points);

    private static CurrentLevel? Of(TrendPoint[] near, int end, IReadOnlyList<TrendPoint> points) => StraightTrend.Of(near) is { } line
        ? new CurrentLevel(line.At(points[end].Session), line.LineAt(points[end].Session), near.Length)
        : points.Count == 1 ? new CurrentLevel(points[0].Value, null, 1) : null;
}
