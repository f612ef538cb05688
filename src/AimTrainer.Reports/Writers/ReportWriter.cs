namespace AimTrainer.Reports;

/// <summary>Writes reports. For use from several threads at once: pages and charts are drawn one after the other.</summary>
public static class ReportWriter
{
    // The plotting library shares its fonts, and one page at a time bounds the memory of a busy console.
    private static readonly Lock Drawing = new();

    /// <summary>Writes a report.</summary>
    /// <param name="report">The report.</param>
    /// <param name="format">As what.</param>
    /// <param name="output">Where to; stays open.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such format.</exception>
    public static void Write(BowlerReport report, ReportFormat format, Stream output)
    {
        switch (format)
        {
            case ReportFormat.Csv:
                CsvReport.Write(report, output);
                break;
            case ReportFormat.Json:
                JsonReport.Write(report, output);
                break;
            default:
                lock (Drawing)
                {
                    Draw(report, format, output);
                }

                break;
        }
    }

    /// <summary>The charts of a report, for pages that lay them out themselves: trend, lane, split, ten-shot spread.</summary>
    /// <param name="report">The report.</param>
    public static (ReportPicture Trend, ReportPicture Lane, ReportPicture Split, ReportPicture TenShots) Pictures(BowlerReport report)
    {
        lock (Drawing)
        {
            return (
                Picture(TrendChart.Of(report, 340, 190)), Picture(LaneChart.Of(report, 208, 352)), Picture(SplitChart.Of(report, 210, 118)),
                Picture(TenShotChart.Of(report, 210, 118)));
        }
    }

    private static ReportPicture Picture(ReportChart chart) =>
        new(chart.Title, chart.Caption, chart.Alternative, chart.Width, chart.Height, chart.Fill is null ? null : chart.ToSvg());

    /// <summary>Writes a comparison of balls.</summary>
    /// <param name="report">The comparison.</param>
    /// <param name="format">As what.</param>
    /// <param name="output">Where to; stays open.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such format.</exception>
    public static void Write(BallsReport report, ReportFormat format, Stream output)
    {
        switch (format)
        {
            case ReportFormat.Csv:
                BallsCsv.Write(report, output);
                break;
            case ReportFormat.Json:
                BallsJson.Write(report, output);
                break;
            default:
                lock (Drawing)
                {
                    Draw(report, format, output);
                }

                break;
        }
    }

    private static void Draw(BallsReport report, ReportFormat format, Stream output)
    {
        switch (format)
        {
            case ReportFormat.Html:
                BallsHtml.Write(report, output);
                break;
            case ReportFormat.Pdf:
                BallsPages.WritePdf(report, output);
                break;
            case ReportFormat.Png:
                BallsPages.WritePng(report, output);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(format), format, "no such format");
        }
    }

    private static void Draw(BowlerReport report, ReportFormat format, Stream output)
    {
        switch (format)
        {
            case ReportFormat.Html:
                HtmlReport.Write(report, output);
                break;
            case ReportFormat.Pdf:
                PageReport.WritePdf(report, output);
                break;
            case ReportFormat.Png:
                PageReport.WritePng(report, output);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(format), format, "no such format");
        }
    }
}
