using System.Globalization;

namespace AimTrainer.Analysis;

/// <summary>Differences in words.</summary>
public static class ComparisonWords
{
    /// <summary>A sentence of one finding.</summary>
    internal static string Of(string ball, string reference, string where, MeasureComparison found, double margin) => found.Verdict switch
    {
        ComparisonVerdict.NotJudged => "",
        ComparisonVerdict.TooFew when found.BallThrows >= ComparisonSettings.Fewest && found.ReferenceThrows >= ComparisonSettings.Fewest =>
            $"{Capital(Name(found.Measure.Name))}{where}: not known; {found.Best.Difference.Why}.",
        ComparisonVerdict.TooFew =>
            $"{Capital(Name(found.Measure.Name))}{where}: not known; {found.BallThrows} throws of {ball} and {found.ReferenceThrows} of {reference} have it, "
            + $"needed are {ComparisonSettings.Fewest} of each.",
        _ => Judged(ball, reference, where, found.Measure, found.Best, found.Equivalence, found.Verdict, margin) + More(found),
    };

    /// <summary>A sentence over all lines.</summary>
    internal static string Of(string ball, string reference, OverallComparison found, double margin)
    {
        var lines = found.LinesDifferP < 0.05 ? " The lines do not agree: look at each by itself." : "";
        return $"{Judged(ball, reference, $" over {found.Lines} lines", found.Measure, found.Difference, found.Equivalence, found.Verdict, margin)}{lines}";
    }

    /// <summary>All findings of a ball on a line in one sentence.</summary>
    internal static string Sum(string ball, string reference, string line, IReadOnlyList<MeasureComparison> measures, ComparisonSettings settings)
    {
        var judged = measures.Where(found => found.Verdict is not (ComparisonVerdict.NotJudged or ComparisonVerdict.TooFew)).ToList();
        if (judged.Count == 0)
        {
            return $"{ball} against {reference} on {line}: nothing can be said yet.";
        }

        var shown = judged.Where(found => found.Verdict is ComparisonVerdict.Different or ComparisonVerdict.DifferentBeyondMargin).ToList();
        var parts = shown.Select(found => Amount(found.Measure, found.Best.Difference)).ToList();
        var text = parts.Count == 0 ? "" : $"{ball} is {Listed(parts)}, compared with {reference} on {line}";
        var rest = new List<string>();
        foreach (var unit in judged.Where(found => found.Verdict == ComparisonVerdict.Equal).GroupBy(found => found.Measure.Unit))
        {
            rest.Add($"equal within {Margin(unit.Key, settings.MarginOf(unit.Key))}: {Listed([.. unit.Select(found => Name(found.Measure.Name))])}");
        }

        foreach (var unit in judged.Where(found => found.Verdict == ComparisonVerdict.Open).GroupBy(found => found.Measure.Unit))
        {
            rest.Add($"no difference larger than {Margin(unit.Key, settings.MarginOf(unit.Key))} can be claimed or ruled out yet: "
                + Listed([.. unit.Select(found => Name(found.Measure.Name))]));
        }

        return (text, rest.Count) switch
        {
            ("", _) => $"{ball} against {reference} on {line}: {string.Join("; ", rest)}.",
            (_, 0) => text + ".",
            _ => $"{text}; {string.Join("; ", rest)}.",
        };
    }

    /// <summary>A value that stands out and stays in.</summary>
    internal static string StandsOut(ComparedMeasure measure, OrderedThrow one, double value) =>
        $"throw {one.Number}: {Name(measure.Name)} {Number(measure.Unit, value)} {Unit(measure.Unit)} stands out from the other throws with {one.Ball} and stays in; "
        + "void or correct it if it was misread";

    /// <summary>A measure in words.</summary>
    public static string Name(string measure) => measure switch
    {
        "entryBoard" => "board at the pins",
        "breakpointBoard" => "board of the breakpoint",
        "breakpointFeet" => "distance of the breakpoint",
        "entryAngle" => "direction at the pins",
        "sharpness" => "sharpness",
        "speedAtPins" => "speed at the pins",
        _ => string.Create(CultureInfo.InvariantCulture, $"board at {measure.AsSpan("boardAt".Length)} ft"),
    };

    /// <summary>A verdict in a word or two.</summary>
    public static string Verdict(ComparisonVerdict verdict) => verdict switch
    {
        ComparisonVerdict.TooFew => "too few throws",
        ComparisonVerdict.Open => "open",
        ComparisonVerdict.Equal => "equal",
        ComparisonVerdict.Different => "different",
        ComparisonVerdict.DifferentBeyondMargin => "beyond the margin",
        _ => "",
    };

    private static string Judged(
        string ball, string reference, string where, ComparedMeasure measure, MeanDifference difference, Equivalence? equivalence, ComparisonVerdict verdict, double margin)
    {
        var amount = Amount(measure, difference.Difference);
        return verdict switch
        {
            ComparisonVerdict.DifferentBeyondMargin => $"{ball} is {amount} than {reference}{where}.",
            ComparisonVerdict.Different when equivalence is { Shown: true } =>
                $"{ball} is {amount} than {reference}{where}: shown, but less than {Margin(measure.Unit, margin)}.",
            ComparisonVerdict.Different =>
                $"{ball} is {amount} than {reference}{where}; that it is more than {Margin(measure.Unit, margin)} cannot be claimed yet.",
            ComparisonVerdict.Equal =>
                $"{Capital(Name(measure.Name))}{where}: equal within {Margin(measure.Unit, margin)} "
                + $"(90 % limits {Number(measure.Unit, equivalence!.Low)} to {Number(measure.Unit, equivalence.High)}).",
            _ => $"{Capital(Name(measure.Name))}{where}: no difference can be claimed yet, and none larger than {Margin(measure.Unit, margin)} ruled out; "
                + $"{ball} was {amount} than {reference}{(difference.Difference.DiffersFromZero == true ? ", which among so many questions may be chance" : "")}.",
        };
    }

    private static string More(MeasureComparison found) => found.Verdict != ComparisonVerdict.Open ? ""
        : found.MoreThrows is { } more ? $" About {more} more good throws of each would settle it, if the difference stays as it is."
        : $" {Capital(found.MoreThrowsWhy!)}.";

    /// <summary>"2.3 boards (0.9 to 3.6) further inside at the pins".</summary>
    /// <param name="measure">What is compared.</param>
    /// <param name="difference">The ball less the reference ball; its value must be known.</param>
    public static string Amount(ComparedMeasure measure, BoundedEstimate difference)
    {
        var value = difference.Value!.Value;
        var size = difference.Times(value < 0 ? -1 : 1);
        var limits = size.Low is { } low && size.High is { } high ? $" ({Number(measure.Unit, low)} to {Number(measure.Unit, high)})" : "";
        return $"{Number(measure.Unit, size.Value!.Value)} {Unit(measure.Unit)}{limits} {Direction(measure, value >= 0)}";
    }

    private static string Direction(ComparedMeasure measure, bool more) => measure.Name switch
    {
        "breakpointBoard" => more ? "further inside at the breakpoint" : "further outside at the breakpoint",
        "breakpointFeet" => more ? "later in turning" : "earlier in turning",
        "entryAngle" => more ? "steeper at the pins" : "flatter at the pins",
        "sharpness" => more ? "sharper at the breakpoint" : "less sharp at the breakpoint",
        "speedAtPins" => more ? "faster at the pins" : "slower at the pins",
        "entryBoard" => more ? "further inside at the pins" : "further outside at the pins",
        _ => $"{(more ? "further inside" : "further outside")} at {measure.Distance} ft",
    };

    /// <summary>A unit in words: "boards", "degrees a foot".</summary>
    public static string Unit(MeasureUnit unit) => unit switch
    {
        MeasureUnit.Boards => "boards",
        MeasureUnit.Feet => "ft",
        MeasureUnit.Degrees => "degrees",
        MeasureUnit.DegreesPerFoot => "degrees a foot",
        _ => "mph",
    };

    /// <summary>A margin in words: "half a board", "0.3 mph".</summary>
    public static string Margin(MeasureUnit unit, double margin) => (unit, margin) switch
    {
        (MeasureUnit.Boards, 0.5) => "half a board",
        (MeasureUnit.Boards, 1) => "a board",
        (MeasureUnit.Degrees, 0.5) => "half a degree",
        (MeasureUnit.Degrees, 1) => "a degree",
        (MeasureUnit.Feet, 1) => "a foot",
        _ => string.Create(CultureInfo.InvariantCulture, $"{margin:0.###} {Unit(unit)}"),
    };

    /// <summary>A number of a unit, with as many digits as are worth saying.</summary>
    public static string Number(MeasureUnit unit, double value)
    {
        var digits = unit == MeasureUnit.DegreesPerFoot ? 3 : unit is MeasureUnit.Degrees or MeasureUnit.MilesPerHour ? 2 : 1;
        return (Math.Round(value, digits) + 0.0).ToString(CultureInfo.InvariantCulture);
    }

    private static string Listed(IReadOnlyList<string> parts) => parts.Count < 2 ? string.Concat(parts) : $"{string.Join(", ", parts.SkipLast(1))} and {parts[^1]}";

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
