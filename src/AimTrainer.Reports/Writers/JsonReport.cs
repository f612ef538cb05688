using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>The report as one document: every figure with its limits, the unknown null with its reason (docs/reports.md).</summary>
internal static class JsonReport
{
    private static readonly JsonSerializerOptions Options = new(DomainJson.Options)
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        DefaultIgnoreCondition = JsonIgnoreCondition.Never,
    };

    public static void Write(BowlerReport report, Stream output)
    {
        JsonSerializer.Serialize(output, Document(report), Options);
        output.WriteByte((byte)'\n');
    }

    private static object Document(BowlerReport report) => new
    {
        report.Bowler,
        report.Hand,
        report.Simulated,
        report.Made,
        report.From,
        report.To,
        Lane = report.LaneName,
        report.Work,
        LanePicture = new { report.Lane.Shots, report.Lane.AllShots, Targets = report.Lane.Targets.Select(Target) },
        Causes = Causes(report.Causes),
        Trend = Trend(report.Trend),
        TenShots = report.TenShots,
        Sentences = report.Sentences,
        report.WorkOn,
        report.Missing,
        report.Notes,
        Cautions = BowlerReport.Cautions,
    };

    private static object Target(LaneTarget target) => new
    {
        target.Name,
        target.DistanceFeet,
        target.CentreBoard,
        target.WidthBoards,
        target.WidthChanged,
        target.Shots,
        target.Measured,
        target.Held,
        target.MeanMissBoards,
        target.SpreadBoards,
        target.GrossMisses,
        target.MeanMissWithoutGrossBoards,
        target.SpreadWithoutGrossBoards,
        target.Ellipse,
        target.Crossings,
    };

    private static object Causes(ReportCauses causes) => new
    {
        causes.Line,
        causes.Shots,
        causes.Split,
        causes.GrossSetAside,
        causes.Target?.Target,
        DistanceFeet = causes.Target?.Distance,
        causes.Target?.LaydownBoards,
        causes.Target?.AngleBoards,
        causes.Target?.BeyondBoards,
        causes.Shares?.LaydownShare,
        causes.Shares?.AngleShare,
        causes.Shares?.BeyondShare,
        causes.Why,
    };

    private static object Trend(ReportTrend trend) => new
    {
        trend.Place,
        trend.Points,
        trend.TooFewShots,
        trend.OtherPlaces,
        Verdict = trend.Figures?.Rule is null ? (ImprovementVerdict?)null : trend.Verdict,
        Rule = trend.Figures?.Rule is { } rule ? new { rule.Confidence, rule.NextLookAt, Looks = rule.Looks } : null,
        SessionsAlike = trend.Alike,
        trend.Why,
    };
}
