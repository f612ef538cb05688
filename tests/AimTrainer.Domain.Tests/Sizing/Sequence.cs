namespace AimTrainer.Domain.Tests;

/// <summary>Shots in a row for the tests of sizing rules.</summary>
internal static class Sequence
{
    public static BoardOffset Boards(double boards) => BoardOffset.FromBoards(boards);

    /// <summary>The widths shown at each shot and after the last, for hits (H) and misses (M).</summary>
    public static IEnumerable<SizingState> States(this Sizing rule, SizingState start, string outcomes)
    {
        var state = start;
        yield return state;
        foreach (var outcome in outcomes)
        {
            state = rule.After(state, new SizedShot(outcome == 'H', BoardOffset.Zero));
            yield return state;
        }
    }

    public static double[] Widths(this Sizing rule, double start, string outcomes) =>
        [.. rule.States(rule.Start(Boards(start)), outcomes).Select(state => state.Width.Boards)];

    /// <summary>A standard normal number for a position in the stream of a seed.</summary>
    public static double Normal(ulong seed, ulong position) =>
        StandardNormal.Quantile(SeededRandom.Unit(seed, position) + (0.5 / (1UL << 53)));
}
