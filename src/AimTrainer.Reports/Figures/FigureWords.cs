using System.Globalization;
using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>How figures are said to people, the same on the terminal and on the console's pages.</summary>
public static class FigureWords
{
    /// <summary>"1.30 left", "0.40 right" or "on centre": the sides as the bowler sees them.</summary>
    /// <param name="boards">Boards, positive inside.</param>
    /// <param name="hand">Whose.</param>
    public static string Miss(double boards, Hand hand) => TwoPlaces(Math.Abs(boards)) switch
    {
        "0.00" => "on centre",
        var size => $"{size} {(boards > 0 == (hand == Hand.Right) ? "left" : "right")}",
    };

    /// <summary>"1 shot", "2 shots".</summary>
    public static string Count(long count, string one) => string.Create(CultureInfo.InvariantCulture, $"{count} {one}{(count == 1 ? "" : "s")}");

    /// <summary>A number to two decimals, without needless zeros.</summary>
    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>A number with exactly two decimals, for columns; a dash when it is not known.</summary>
    public static string TwoPlaces(double? value) => value is { } known ? known.ToString("0.00", CultureInfo.InvariantCulture) : "-";

    /// <summary>A number to two decimals, or a dash when it is not known.</summary>
    public static string Number(double? value) => value is { } known ? Number(known) : "-";

    /// <summary>A share as whole per cent with its sign, or a dash.</summary>
    public static string Percent(double? value) => value is null ? "-" : WholePercent(value) + " %";

    /// <summary>A share as whole per cent without its sign, or a dash.</summary>
    public static string WholePercent(double? value) => value is { } known ? (known * 100).ToString("0", CultureInfo.InvariantCulture) : "-";

    /// <summary>"0.40 (-0.30 to 1.10)"; without limits the figure alone; a dash when it is not known.</summary>
    public static string Cell(BoundedEstimate estimate) => estimate switch
    {
        { Value: null } => "-",
        { Low: { } low, High: { } high, Value: { } value } => $"{Signless(value)} ({Signless(low)} to {Signless(high)})",
        { Value: { } value } => Signless(value),
    };

    /// <summary>"71 % (45 to 88)", or a dash.</summary>
    public static string Rate(HitRateEstimate rate) =>
        rate.Rate is null ? "-" : $"{Percent(rate.Rate)} ({WholePercent(rate.WilsonLow)} to {WholePercent(rate.WilsonHigh)})";

    /// <summary>"0.40 (-0.30 to 1.10)", or why it is not known.</summary>
    public static string Limited(BoundedEstimate estimate) => estimate switch
    {
        { Value: null } => $"not known ({estimate.Why})",
        { Low: null, Value: { } value } => $"{Signless(value)} (no limits: {estimate.Why})",
        _ => Cell(estimate),
    };

    /// <summary>Two decimals; what rounds to nothing has no sign.</summary>
    public static string Signless(double value) => TwoPlaces(Math.Round(value, 2) + 0.0);
}
