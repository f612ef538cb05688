using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>What a report says beside its figures.</summary>
internal static class ReportNotes
{
    /// <summary>What was left out, and what to take care of.</summary>
    public static IEnumerable<string> Of(BowlerPractice practice, LanePicture lane, ReportCauses causes, ReportTrend trend, PracticeFilter filter)
    {
        if (practice.OtherHandSessions > 0)
        {
            yield return $"{ReportWords.Count(practice.OtherHandSessions, "session")} with the other hand left out: boards count from the other edge there.";
        }

        if (practice.CutOff)
        {
            yield return "There is more practice than one report takes; the oldest is left out. Choose a period with --from and --to.";
        }

        if (filter.From is not null || filter.To is not null)
        {
            yield return "The period was chosen; a trend may only be believed when it was chosen before anybody looked.";
        }

        if (lane.Shots < lane.AllShots)
        {
            yield return $"Lane picture, split and ten-shot spread: the newest {lane.Shots} of {lane.AllShots} shots.";
        }

        if (lane.Targets.Count > LanePicture.MostDrawn)
        {
            yield return $"Drawn are the {LanePicture.MostDrawn} targets with most shots; {lane.Targets.Count - LanePicture.MostDrawn} more are in the JSON and CSV.";
        }

        if (lane.Targets.AsEnumerable().Sum(target => target.GrossMisses) is > 0 and var gross)
        {
            yield return $"{gross} gross {(gross == 1 ? "miss" : "misses")} (modified z beyond 3.5): drawn and counted in the table and the ten-shot spread, "
                + "set aside in sentences, split, ellipse and what to work on where they are at most one in ten. Misread or real?";
        }

        if (lane.Targets.AsEnumerable().Sum(target => target.Crossings.AsEnumerable().Count(crossing => crossing is { Gross: true, Test: true })) is > 0 and var testGross)
        {
            yield return $"{testGross} of them {(testGross == 1 ? "is" : "are")} in test blocks: the trend has them in.";
        }

        if (causes.Shares is not null)
        {
            yield return "Split as measured: the sensor's own noise is in it. A negative share made up for the others.";
        }

        if (trend.Alike)
        {
            yield return "Sessions resemble the ones before them more than chance explains: the trend's limits are narrower than they should be.";
        }

        if (trend.OtherPlaces.Count > 0)
        {
            yield return $"Tests {string.Join(", ", trend.OtherPlaces)} are not shown here; aimtrainer trend has them.";
        }
    }

    /// <summary>What the report lacks, and what would bring it.</summary>
    public static IEnumerable<string> Missing(ReportWork work, LanePicture lane, ReportCauses causes, ReportTrend trend, ReportTenShots tens)
    {
        if (work.Sessions == 0)
        {
            yield return "No session in this period.";
        }
        else if (work.Shots == 0)
        {
            yield return "No shot that counts.";
        }
        else if (lane.Main is not { Measured: > 0 })
        {
            yield return "No crossing was measured: say where the ball crossed the target, by keypad, file or sensor.";
        }

        if (causes.Why is { } cause)
        {
            yield return $"The split of the misses: {cause}.";
        }

        if (trend.Why is { } noTrend)
        {
            yield return $"The trend: {noTrend}.";
        }

        if (tens.Why is { } noTen)
        {
            yield return $"The ten-shot spread: {noTen}.";
        }
    }
}
