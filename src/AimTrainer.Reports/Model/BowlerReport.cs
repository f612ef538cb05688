using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>One page that a coach hands to a bowler. Pure: made from what the record holds, written by one writer for each format.</summary>
/// <param name="Bowler">Whose.</param>
/// <param name="Hand">The hand; boards count from its edge.</param>
/// <param name="Simulated">Whether every shot is invented: simulated sessions are never mixed with real ones.</param>
/// <param name="Made">When the report was made.</param>
/// <param name="From">First moment of the period; null for no limit.</param>
/// <param name="To">First moment after the period; null for no limit.</param>
/// <param name="LaneName">The lane of the newest session, whose profile says how far the ball runs straight.</param>
/// <param name="Work">What was worked on.</param>
/// <param name="Lane">The newest shots on the lane.</param>
/// <param name="Causes">Where the misses came from.</param>
/// <param name="Trend">The spread over sessions.</param>
/// <param name="TenShots">The ten-shot spread.</param>
/// <param name="Sentences">Three plain sentences.</param>
/// <param name="WorkOn">One thing to work on.</param>
/// <param name="Notes">What was left out and what to take care of.</param>
/// <param name="Missing">What the report lacks, and what would bring it.</param>
public sealed record BowlerReport(
    string Bowler,
    Hand Hand,
    bool Simulated,
    DateTimeOffset Made,
    DateTimeOffset? From,
    DateTimeOffset? To,
    string LaneName,
    ReportWork Work,
    LanePicture Lane,
    ReportCauses Causes,
    ReportTrend Trend,
    ReportTenShots TenShots,
    ValueList<ReportSentence> Sentences,
    WorkOn WorkOn,
    ValueList<string> Notes,
    ValueList<string> Missing)
{
    /// <summary>What stands at the top when every shot is invented.</summary>
    public const string SimulatedNotice = "Simulated: every shot in this report is invented. It says nothing about a real person.";

    /// <summary>What is said on every report.</summary>
    public static ValueList<string> Cautions { get; } =
    [
        "Nobody walks past the foul line to place, check or measure a target: the lane beyond it is oiled and slippery.",
        "Stop when the hand, wrist or arm hurts; this report never says how much to throw.",
    ];
}
