using System.Text.Json.Serialization;
using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>A comparison of balls with everything that a page of it shows. Pure: made from what was read, written by one writer for each format.</summary>
/// <param name="Bowler">Whose; null when a file names nobody.</param>
/// <param name="Hand">The hand; boards count from its edge.</param>
/// <param name="Simulated">Whether every throw is invented: simulated sessions are never mixed with real ones.</param>
/// <param name="Made">When it was made.</param>
/// <param name="From">First moment of the period; null for no limit.</param>
/// <param name="To">First moment after the period; null for no limit.</param>
/// <param name="File">The file that the throws came from; null for the record.</param>
/// <param name="Sessions">The sessions that were looked at, oldest first.</param>
/// <param name="Margins">Up to where a difference does not matter.</param>
/// <param name="Throws">Every throw that was looked at, in the order thrown.</param>
/// <param name="Comparison">What came of it.</param>
/// <param name="Fits">Where each ball fits, in words.</param>
/// <param name="Notes">What else to know.</param>
public sealed record BallsReport(
    string? Bowler,
    Hand Hand,
    bool Simulated,
    DateTimeOffset Made,
    DateTimeOffset? From,
    DateTimeOffset? To,
    string? File,
    ValueList<BallsSession> Sessions,
    BallsMargins Margins,
    ValueList<BallsThrow> Throws,
    ComparisonReport Comparison,
    ValueList<string> Fits,
    ValueList<string> Notes)
{
    /// <summary>What stands at the top when every throw is invented.</summary>
    public const string SimulatedNotice = "Simulated: every throw in this comparison is invented. It says nothing about a real ball.";

    /// <summary>What is said on every comparison.</summary>
    public static ValueList<string> Cautions { get; } =
    [
        "Nobody walks past the foul line to place, check or measure anything: the lane beyond it is oiled and slippery.",
        "Wipe the ball between throws with a dry towel, so that it does not carry oil. Stop when the hand, wrist or arm hurts.",
    ];

    /// <summary>The balls, the reference ball first, then in the order in which they came.</summary>
    [JsonIgnore]
    public IReadOnlyList<string> Balls =>
    [
        .. Throws.AsEnumerable().Select(one => one.Ball).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase)
            .OrderByDescending(ball => string.Equals(ball, Comparison.Reference, StringComparison.OrdinalIgnoreCase)),
    ];

    /// <summary>The lines, in the order in which they came.</summary>
    [JsonIgnore]
    public IReadOnlyList<string> Lines =>
        [.. Throws.AsEnumerable().Where(one => one.Ball is not null).Select(one => one.Line).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase)];

    /// <summary>The throws of a ball at a line that are in the comparison.</summary>
    public IEnumerable<BallsThrow> Good(string ball, string line) => Throws.AsEnumerable().Where(one =>
        one.Counts && string.Equals(one.Ball, ball, StringComparison.OrdinalIgnoreCase) && string.Equals(one.Line, line, StringComparison.OrdinalIgnoreCase));

    /// <summary>The mean board at each distance that at least half of a ball's good throws at a line have, nearest first; without what may be misread.</summary>
    public IReadOnlyList<BallsPlace> MeanPath(string ball, string line)
    {
        var good = Good(ball, line).ToList();
        return
        [
            .. good.SelectMany(one => one.Places.Where(place => !place.Misread)).GroupBy(place => place.Feet).Where(same => same.Count() * 2 >= good.Count)
                .OrderBy(same => same.Key).Select(same => new BallsPlace(same.Key, same.Average(place => place.Board))),
        ];
    }
}
