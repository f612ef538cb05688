using System.Globalization;
using AimTrainer.Analysis;

namespace AimTrainer.Reports;

/// <summary>How a comparison is put in words on paper and pages.</summary>
public static class BallsWords
{
    /// <summary>The shape and line of each ball: what is said where a picture cannot be seen.</summary>
    private static readonly string[] Marks = ["filled dot, whole line", "open diamond, broken line", "open square, dotted line", "open triangle, whole thin line"];

    /// <summary>How a ball is drawn, by its place among the balls.</summary>
    /// <param name="place">From 0.</param>
    public static string Mark(int place) => Marks[place % Marks.Length];

    /// <summary>"A", "B", ... "A1" after the 26th.</summary>
    /// <param name="place">From 0.</param>
    public static string Letter(int place) =>
        $"{(char)('A' + (place % 26))}{(place < 26 ? "" : (place / 26).ToString(CultureInfo.InvariantCulture))}";

    /// <summary>Why a throw is left out, each measure by its name; empty when it is in all.</summary>
    public static string Reasons(BallsThrow one) => string.Join("; ", one.Reasons.AsEnumerable().Select(why =>
        why.Measure is { } measure ? $"{ComparisonWords.Name(measure)} only: {why.Reason}" : why.Reason));

    /// <summary>Every sentence of the answer, the sums first.</summary>
    public static IEnumerable<string> Answer(ComparisonReport comparison) => comparison.Problem is { } problem
        ? [Capital(problem) + "."]
        : [.. comparison.Lines.AsEnumerable().Select(line => line.Sentence), .. comparison.Overall.AsEnumerable().Select(found => found.Sentence)];

    /// <summary>What would settle what is open, line by line; empty when nothing is.</summary>
    public static IEnumerable<string> More(ComparisonReport comparison)
    {
        foreach (var line in comparison.Lines)
        {
            var few = line.Measures.Where(found => found.Measure.Claimed && found.Verdict == ComparisonVerdict.TooFew).ToList();
            if (few.Count > 0 && Math.Min(line.ReferenceThrows, line.BallThrows) < ComparisonSettings.Fewest)
            {
                var needs = new[] { Need(line.BallThrows, line.Ball), Need(line.ReferenceThrows, comparison.Reference) }.OfType<string>();
                yield return $"{line.Ball} on {line.Line}: {string.Join(" and ", needs)} until anything can be said.";
            }

            foreach (var found in line.Measures.Where(found => found.Verdict == ComparisonVerdict.Open))
            {
                yield return $"{line.Ball} on {line.Line}, {ComparisonWords.Name(found.Measure.Name)}: "
                    + (found.MoreThrows is { } more
                        ? string.Create(CultureInfo.InvariantCulture, $"about {more} more good throws of each ball would settle it, if the difference stays as it is.")
                        : $"{found.MoreThrowsWhy}.");
            }
        }
    }

    /// <summary>"board 12.3 at 15 ft, 8.1 at 40 ft".</summary>
    public static string Places(BallsThrow one) => one.Places.Count == 0 ? "not measured"
        : string.Join(", ", one.Places.AsEnumerable().Select(place => $"{ReportWords.Short(place.Board)} at {ReportWords.Short(place.Feet)}"));

    /// <summary>"24 throws, 22 in the comparison; 2 left out of all, 1 of a measure."</summary>
    public static string Summary(BallsReport report)
    {
        var (counts, partly) = (report.Throws.Count(one => one.Counts), report.Throws.Count(one => one.Counts && one.Reasons.Count > 0));
        return $"{ReportWords.Count(report.Throws.Count, "throw")}, {counts.ToString(CultureInfo.InvariantCulture)} in the comparison"
            + $"; {(report.Throws.Count - counts).ToString(CultureInfo.InvariantCulture)} left out of all, {partly.ToString(CultureInfo.InvariantCulture)} of a measure.";
    }

    /// <summary>"Line A: board 15 at 15 ft".</summary>
    public static string LineTitle(BallsReport report, int place) =>
        report.Lines.Count == 1 ? Capital(report.Lines[0]) : $"Line {Letter(place)}: {report.Lines[place]}";

    /// <summary>A throw's line by its letter.</summary>
    public static string LetterOf(BallsReport report, BallsThrow one) =>
        one.Line is not { } line || one.Ball is null ? "-" : Letter(report.Lines.TakeWhile(known => !string.Equals(known, line, StringComparison.OrdinalIgnoreCase)).Count());

    /// <summary>What each judged measure says at a line, and what it was adjusted for.</summary>
    internal static IEnumerable<string> Sentences(BallsReport report, string line) =>
        report.Comparison.Lines.Where(one => string.Equals(one.Line, line, StringComparison.OrdinalIgnoreCase))
            .SelectMany(one => Sentences(report, one).Append(LaneMoved(report.Comparison, one)));

    /// <summary>The same of one ball on one line.</summary>
    public static IEnumerable<string> Sentences(BallsReport report, LineComparison one)
    {
        foreach (var found in one.Measures.Where(found => found.Sentence.Length > 0))
        {
            yield return found.Sentence + (found.Adjusted?.SlopesDifferP < 0.01
                ? " What is adjusted for moves the two balls differently here: the difference holds for throws as these on average, not for others." : "")
                + (found.SpreadHolmP < BallComparer.Alpha ? $" {one.Ball} scatters {ReportWords.Two(found.Spread!.Ratio ?? 0)} times as much here." : "");
        }

        var drift = one.Measures.Any(found => found.Adjusted?.Drift is not null);
        yield return $"{ReportWords.Count(one.BallThrows, "good throw")} of {one.Ball}, {one.ReferenceThrows} of {report.Comparison.Reference}. Adjusted for: "
            + $"{(one.AdjustedFor.Count == 0 && !drift ? "nothing" : string.Join(", ", one.AdjustedFor.AsEnumerable().Concat(drift ? ["the drift of the lane"] : [])))}."
            + (one.NotAdjustedFor.Count == 0 ? "" : $" Not adjusted for: {string.Join("; ", one.NotAdjustedFor.AsEnumerable())}.")
            + $" Not compared: {string.Join("; ", one.NotCompared.AsEnumerable())}.";
    }

    /// <summary>Whether the lane moved under the reference ball while both were thrown at a line, by the farthest board that was measured.</summary>
    /// <param name="comparison">The answer.</param>
    /// <param name="one">One ball on one line.</param>
    public static string LaneMoved(ComparisonReport comparison, LineComparison one)
    {
        var far = one.Measures.Where(found => found.Measure.Unit == MeasureUnit.Boards && (found.Measure.Name == "entryBoard" || found.Measure.Distance is not null))
            .OrderBy(found => found.Measure.Distance?.Value ?? double.PositiveInfinity).ToList();
        if (far.LastOrDefault(found => found.Adjusted?.Drift?.Value is not null) is not { } known)
        {
            const string drift = "drift of the lane: ";
            var why = one.Measures.SelectMany(found => found.Adjusted?.NotUsed ?? []).Where(not => not.StartsWith(drift, StringComparison.Ordinal)).Select(not => not[drift.Length..]);
            return $"Whether the lane moved is not known: {why.FirstOrDefault("too few throws with a measured board")}.";
        }

        var moved = known.Adjusted!.Drift!.Times(10);
        var amount = $"in ten throws {comparison.Reference} crossed {ComparisonWords.Amount(known.Measure, moved)}";
        return moved.DiffersFromZero == true
            ? $"The lane moved: {amount}. The differences are as if it had not."
            : $"No move of the lane can be claimed: {amount}.";
    }

    /// <summary>What stands at the foot.</summary>
    public static IEnumerable<string> Foot(BallsReport report)
    {
        yield return $"Take care: {string.Join(" ", BallsReport.Cautions.AsEnumerable())}";
        foreach (var note in report.Notes.AsEnumerable().Concat(report.Comparison.Notices.AsEnumerable()))
        {
            yield return $"Note: {note}.";
        }

        yield return "Limits are 95 % limits of the difference for throws as these. A difference is called one only where chance alone would make any of all that are asked in "
            + "fewer than 5 of 100 comparisons. Boards count from the ball hand's edge; inside is toward higher boards.";
    }

    /// <summary>With a capital first letter.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private static string? Need(int has, string ball) => has >= ComparisonSettings.Fewest ? null : $"{ReportWords.Count(ComparisonSettings.Fewest - has, "more good throw")} of {ball}";
}
