using System.Globalization;

namespace AimTrainer.Analysis;

/// <summary>Where each ball of a bag fits, in words: where it turns and how sharply, on the lines it was thrown at, from its own throws only.</summary>
public static class BagWords
{
    /// <summary>Says it, one sentence a line and property; what was not measured is said to be not known.</summary>
    /// <param name="balls">The balls on their lines, as thrown.</param>
    public static IReadOnlyList<string> Of(IEnumerable<BallOnLine> balls)
    {
        var sentences = new List<string>();
        foreach (var line in balls.GroupBy(ball => ball.Line))
        {
            var all = line.ToList();
            sentences.Add(Sentence($"On {line.Key}, the one that turns first before the others", $"On {line.Key}, where a ball turns is not known", all, ball => ball.BreakpointFeet, descending: false, Turning));
            sentences.Add(Sentence($"On {line.Key}, the one that turns most sharply before the others", $"On {line.Key}, how sharply a ball turns is not known", all, ball => ball.SharpnessDegreesPerFoot, descending: true, Sharp));
        }

        return sentences;
    }

    private static string Sentence(string start, string nothing, List<BallOnLine> balls, Func<BallOnLine, BoundedEstimate> of, bool descending, Func<BallOnLine, string> say)
    {
        var known = balls.Where(ball => of(ball).Value is not null).OrderBy(ball => of(ball).Value * (descending ? -1 : 1)).ToList();
        var unknown = balls.Where(ball => of(ball).Value is null).Select(ball => ball.Ball).ToList();
        var named = $"{string.Join(", ", unknown)} (not measured).";
        return known.Count == 0 ? $"{nothing}: {named}"
            : $"{start}: {string.Join("; ", known.Select(say))}.{Overlap(known, of)}{(unknown.Count == 0 ? "" : $" Not known: {named}")}";
    }

    /// <summary>Neighbours whose order is not shown by their own limits.</summary>
    private static string Overlap(List<BallOnLine> known, Func<BallOnLine, BoundedEstimate> of)
    {
        var pairs = new List<string>();
        for (var i = 1; i < known.Count; i++)
        {
            var (first, second) = (of(known[i - 1]), of(known[i]));
            if (first.Low is null || second.Low is null || (first.High >= second.Low && second.High >= first.Low))
            {
                pairs.Add($"{known[i - 1].Ball} and {known[i].Ball}");
            }
        }

        return pairs.Count == 0 ? "" : $" By this alone the order of {string.Join(", of ", pairs)} is open.";
    }

    private static string Turning(BallOnLine ball) => $"{ball.Ball} at {Limited(ball.BreakpointFeet, 1)} ft"
        + (ball.BreakpointBoard.Value is null ? ", board not measured" : $" on board {Limited(ball.BreakpointBoard, 1)}");

    private static string Sharp(BallOnLine ball) => $"{ball.Ball} {Limited(ball.SharpnessDegreesPerFoot, 3)} degrees a foot";

    private static string Limited(BoundedEstimate estimate, int digits)
    {
        return estimate is { Low: { } low, High: { } high }
            ? $"{Number(estimate.Value!.Value)} ({Number(low)} to {Number(high)})"
            : $"{Number(estimate.Value!.Value)} (no limits)";

        string Number(double value) => (Math.Round(value, digits) + 0.0).ToString(CultureInfo.InvariantCulture);
    }
}
