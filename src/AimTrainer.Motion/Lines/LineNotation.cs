using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>
/// Targets of a line as people write them, always with their distances: "20@15 10@42" is board 20 at 15 ft to board 10 at 42 ft.
/// Without distances "20 to 10" means different things to different people.
/// </summary>
public static class LineNotation
{
    /// <summary>What is allowed, for messages.</summary>
    public const string Allowed = "a board from 0.5 to 39.5 and feet from 0 to 60, as 20@15";

    /// <summary>One target.</summary>
    /// <param name="text">BOARD@FEET.</param>
    /// <returns>The target, or null when it is anything else.</returns>
    public static Crossing? ParseTarget(string text)
    {
        var parts = text.Split('@');
        return parts.Length == 2 && Number(parts[0], Board.NearEdge.Boards, Board.FarEdge.Boards) is { } board
            && Number(parts[1], 0, LaneProfile.HeadPin.Value) is { } feet
                ? new Crossing(Feet.FromMeasurement(feet), Board.FromMeasurement(board))
                : null;
    }

    /// <summary>A whole line: targets with blanks between them, the nearest first.</summary>
    /// <param name="text">Two or more of BOARD@FEET.</param>
    /// <param name="problem">What is wrong and what is allowed; null when nothing is.</param>
    /// <returns>The targets, or null when something is wrong.</returns>
    public static ValueList<Crossing>? Parse(string text, out string? problem)
    {
        var targets = new List<Crossing>();
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (ParseTarget(word) is not { } target)
            {
                problem = $"found {FoundText.Short(word)}; allowed: {Allowed}";
                return null;
            }

            if (targets.Count > 0 && target.Distance <= targets[^1].Distance)
            {
                problem = $"found {Write(target)} after {Write(targets[^1])}; allowed: targets that lie farther and farther down";
                return null;
            }

            targets.Add(target);
        }

        problem = targets.Count < 2 ? $"found {targets.Count} {(targets.Count == 1 ? "target" : "targets")}; allowed: two or more, each {Allowed}" : null;
        return problem is null ? targets.ToValueList() : null;
    }

    /// <summary>BOARD@FEET, at most two decimals.</summary>
    public static string Write(Crossing target) =>
        string.Create(CultureInfo.InvariantCulture, $"{target.Board.Boards:0.##}@{target.Distance.Value:0.##}");

    /// <summary>Targets with blanks between them.</summary>
    public static string Write(IEnumerable<Crossing> targets) => string.Join(' ', targets.Select(Write));

    /// <summary>Both targets of a line.</summary>
    public static string Write(LinePlan plan) => Write([plan.Near, plan.Far]);

    private static double? Number(string text, double low, double high) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value) && value >= low && value <= high
            ? value
            : null;
}
