using System.Globalization;
using System.Text;

namespace AimTrainer.Reports;

/// <summary>A comparison as one web page: no script, no outside assets.</summary>
internal static class BallsHtml
{
    private const string Style = """
        .answer p{font-size:14px;line-height:1.4}
        .line{border-top:1px solid #d5dbe1;margin-top:8px;padding-top:6px}
        .pair{display:grid;grid-template-columns:36% 1fr;gap:0 18px;align-items:start}
        .fits{display:grid;grid-template-columns:1fr 46%;gap:0 18px;border-top:1px solid #d5dbe1;margin-top:8px;padding-top:6px}
        .throws td,.throws th{font-size:10.4px}
        .throws td.n{text-align:right;padding-right:9px}
        .out td{color:#5a6672}
        .throws td:nth-child(4){min-width:62mm}
        .wide{overflow-x:auto}
        @media (max-width:600px){.pair,.fits{grid-template-columns:1fr}}
        @media print{.line,.fits{break-inside:avoid}}
        """;

    public static void Write(BallsReport report, Stream output)
    {
        var html = new StringBuilder(1 << 16);
        html.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        html.Append($"<title>{Safe(BallsPages.Title(report))}</title>\n<style>\n{HtmlReport.Style}\n{Style}\n</style>\n</head>\n<body>\n<main>\n");
        Header(html, report);
        html.Append("<section class=\"answer\">\n<h2>The answer</h2>\n");
        Paragraphs(html, BallsWords.Answer(report.Comparison));
        html.Append("</section>\n");
        var more = BallsWords.More(report.Comparison).ToList();
        if (more.Count > 0)
        {
            html.Append("<section class=\"next\">\n<h2>What would settle the rest</h2>\n");
            Paragraphs(html, more);
            html.Append("</section>\n");
        }

        Lines(html, report);
        html.Append("<section class=\"fits\">\n<div>\n<h2>Where each ball fits, in words</h2>\n");
        Paragraphs(html, report.Fits);
        html.Append("</div>\n");
        HtmlReport.Figure(html, BallsBagChart.Of(report, 250, 190), "bag");
        html.Append("</section>\n");
        Throws(html, report);
        html.Append("<footer>\n");
        Paragraphs(html, BallsWords.Foot(report));
        html.Append("</footer>\n</main>\n</body>\n</html>\n");
        output.Write(Encoding.UTF8.GetBytes(html.ToString()));
    }

    private static void Header(StringBuilder html, BallsReport report)
    {
        html.Append($"<header>\n<h1>{Safe(report.Bowler ?? "Balls compared")}</h1>\n<p class=\"quiet\">Balls compared</p>\n");
        html.Append($"<p class=\"quiet\" style=\"flex-basis:100%;margin:0\">{Safe(BallsPages.Subtitle(report))}; ");
        html.Append($"made <time datetime=\"{ReportWords.Day(report.Made)}\">{ReportWords.Day(report.Made)}</time> (UTC)</p>\n</header>\n");
        if (report.Simulated)
        {
            html.Append($"<p class=\"invented\" role=\"note\">{Safe(BallsReport.SimulatedNotice)}</p>\n");
        }
    }

    private static void Lines(StringBuilder html, BallsReport report)
    {
        for (var i = 0; i < report.Lines.Count; i++)
        {
            var line = report.Lines[i];
            var rows = BallsForestChart.Rows(report, line).Count;
            html.Append($"<section class=\"line\">\n<h2>{Safe(BallsWords.LineTitle(report, i))}</h2>\n<div class=\"pair\">\n");
            HtmlReport.Figure(html, BallsPathChart.Of(report, line, 190, 250), "path");
            html.Append("<div>\n");
            HtmlReport.Figure(html, BallsForestChart.Of(report, line, 330, 46 + (BallsForestChart.RowHeight * rows)), "forest");
            Paragraphs(html, BallsWords.Sentences(report, line));
            html.Append("</div>\n</div>\n</section>\n");
        }
    }

    private static void Throws(StringBuilder html, BallsReport report)
    {
        html.Append($"<section class=\"line throws\">\n<h2>Every throw</h2>\n<p>{Safe(BallsWords.Summary(report))}</p>\n<div class=\"wide\">\n<table>\n<thead><tr>");
        foreach (var head in new[] { "", "ball", "line", "board at ft", "left out, and why" })
        {
            html.Append($"<th scope=\"col\">{head}</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        foreach (var one in report.Throws)
        {
            html.Append($"<tr{(one.Counts ? "" : " class=\"out\"")}><td class=\"n\">{one.Number.ToString(CultureInfo.InvariantCulture)}</td><td>{Safe(one.Ball ?? "not named")}</td>");
            html.Append($"<td>{Safe(BallsWords.LetterOf(report, one))}</td><td>{Safe(BallsWords.Places(one))}</td><td>{Safe(BallsWords.Reasons(one))}</td></tr>\n");
        }

        html.Append("</tbody>\n</table>\n</div>\n</section>\n");
    }

    private static void Paragraphs(StringBuilder html, IEnumerable<string> lines)
    {
        foreach (var line in lines)
        {
            html.Append($"<p>{Safe(line)}</p>\n");
        }
    }

    private static string Safe(string text) => HtmlReport.Safe(text);
}
