using System.Globalization;
using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>How a report says numbers, days and places.</summary>
internal static class ReportWords
{
    private const double NearestArrow = 12;
    private const double FarthestArrow = 16;

    /// <summary>One decimal, without a sign on what rounds to nothing.</summary>
    public static string One(double value) => (Math.Round(value, 1) + 0.0).ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>Two decimals likewise.</summary>
    public static string Two(double value) => (Math.Round(value, 2) + 0.0).ToString("0.00", CultureInfo.InvariantCulture);

    /// <summary>As few decimals as needed, at most two.</summary>
    public static string Short(double value) => (Math.Round(value, 2) + 0.0).ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>"1 shot", "2 shots".</summary>
    public static string Count(long count, string one) => string.Create(CultureInfo.InvariantCulture, $"{count} {one}{(count == 1 ? "" : "s")}");

    /// <summary>The UTC day.</summary>
    public static string Day(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>"71 %"; whole per cent.</summary>
    public static string Percent(double share) => (Math.Round(share * 100) + 0.0).ToString("0", CultureInfo.InvariantCulture) + " %";

    /// <summary>"99 %", "99.5 %".</summary>
    public static string Confidence(double confidence) => (confidence * 100).ToString("0.##", CultureInfo.InvariantCulture) + " %";

    /// <summary>"0.8 left", "0.3 right" or "on the mark": sides as the bowler sees them.</summary>
    public static string Side(double boards, Hand hand) => Two(Math.Abs(boards)) switch
    {
        "0.00" => "on the mark",
        var size => $"{size} {SideOf(boards, hand)}",
    };

    /// <summary>"left" or "right".</summary>
    public static string SideOf(double boards, Hand hand) => boards > 0 == (hand == Hand.Right) ? "left" : "right";

    /// <summary>"at the arrows", "at 40 ft".</summary>
    public static string Place(double feet) => feet is >= NearestArrow and <= FarthestArrow ? "at the arrows" : $"at {Short(feet)} ft";

    /// <summary>"board 10 at the arrows".</summary>
    public static string Target(LaneTarget target) => $"board {Short(target.CentreBoard)} {Place(target.DistanceFeet)}";

    /// <summary>" 1 gross miss set aside (board 31.5 on 2026-09-04: misread or real?)", or nothing: at most two are named.</summary>
    public static string GrossSetAside(LaneTarget target)
    {
        var gross = target.Crossings.AsEnumerable().Where(crossing => crossing.Gross).Reverse().ToList();
        if (gross.Count == 0)
        {
            return "";
        }

        if (target.MeanMissWithoutGrossBoards is null)
        {
            return $" {gross.Count} shots lie far off the others: too many for misreads, so none is set aside. Were all of them thrown at this target?";
        }

        var named = string.Join(", ", gross.Take(2).Select(crossing => $"board {Short(crossing.Board)} on {Day(crossing.At)}"));
        var more = gross.Count > 2 ? $" and {gross.Count - 2} more" : "";
        return $" {gross.Count} gross {(gross.Count == 1 ? "miss" : "misses")} set aside ({named}{more}: misread or real?).";
    }

    /// <summary>"1.2 (0.9 to 1.7)", or a dash.</summary>
    public static string Limited(BoundedEstimate estimate) => estimate switch
    {
        { Value: null } => "not known",
        { Low: { } low, High: { } high, Value: { } value } => $"{Two(value)} ({Two(low)} to {Two(high)})",
        { Value: { } value } => $"{Two(value)} (no limits)",
    };

    /// <summary>"0.8 left (0.4 to 1.2)": one decimal, for tables.</summary>
    public static string LimitedSide(BoundedEstimate estimate, Hand hand) => estimate switch
    {
        { Value: null } => "not known",
        { Low: { } low, High: { } high, Value: { } value } => $"{OneSide(value, hand)} ({Range(low, high, hand)})",
        { Value: { } value } => $"{OneSide(value, hand)} (no limits)",
    };

    /// <summary>"0.4 to 1.2" on one side, "0.3 left to 0.5 right" across the mark: one decimal, for tables.</summary>
    private static string Range(double low, double high, Hand hand) => low > 0 == high > 0
        ? $"{One(Math.Min(Math.Abs(low), Math.Abs(high)))} to {One(Math.Max(Math.Abs(low), Math.Abs(high)))}"
        : $"{OneSide(low, hand)} to {OneSide(high, hand)}";

    private static string OneSide(double boards, Hand hand) => One(Math.Abs(boards)) is var size && size == "0.0" ? "0.0" : $"{size} {SideOf(boards, hand)}";

    /// <summary>A change of a logarithm: "2.4 % less", "0.5 % more".</summary>
    public static string Change(double log)
    {
        var percent = One(Math.Abs(Math.Exp(log) - 1) * 100);
        return percent == "0.0" ? "no change" : $"{percent} % {(log < 0 ? "less" : "more")}";
    }

    /// <summary>What is said of the period.</summary>
    public static string Period(BowlerReport report) => report.Work is { First: { } first, Last: { } last }
        ? Day(first) == Day(last) ? Day(first) : $"{Day(first)} to {Day(last)}"
        : (report.From, report.To) switch
        {
            ({ } from, { } to) => $"{Day(from)} to {Day(to.AddTicks(-1))}",
            ({ } from, null) => $"from {Day(from)}",
            (null, { } to) => $"to {Day(to.AddTicks(-1))}",
            _ => "no session yet",
        };

    /// <summary>For a page: a number and its per cent sign stay on one line.</summary>
    public static string Joined(string text) => text.Replace(" %", "\u00A0%", StringComparison.Ordinal);

    /// <summary>The hand, as a word.</summary>
    public static string Of(Hand hand) => hand == Hand.Right ? "right" : "left";
}
