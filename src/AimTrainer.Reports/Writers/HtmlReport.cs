using System.Text;
using System.Text.Encodings.Web;
using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>The report as one web page: no script, no outside assets; it prints on one A4 or Letter page.</summary>
internal static class HtmlReport
{
    internal const string Style = """
        :root{color-scheme:light}
        *{box-sizing:border-box}
        body{margin:0;background:#fff;color:#1d2935;font:12.5px/1.36 "Liberation Sans",Arial,Helvetica,sans-serif}
        main{width:190mm;max-width:100%;margin:6mm auto;padding:0 2mm}
        header{display:flex;flex-wrap:wrap;justify-content:space-between;align-items:baseline;gap:0 12px;border-bottom:1px solid #d5dbe1;padding-bottom:5px}
        h1{font-size:26px;line-height:1.15;margin:0;overflow-wrap:anywhere}
        h2{font-size:15px;margin:0 0 3px}
        p{margin:0 0 6px}
        .quiet,figcaption,footer{color:#5a6672}
        figcaption,footer,td,th,.small{font-size:9.6px;line-height:1.3}
        .invented{background:#1d2935;color:#fff;font-weight:bold;padding:4px 9px;margin:7px 0 0}
        .nothing{background:#f3f6f8;border-left:4px solid #b85a12;font-weight:bold;padding:4px 9px;margin:7px 0 0}
        .top{display:grid;grid-template-columns:40% 1fr;gap:0 18px;margin-top:8px}
        .charts{display:grid;grid-template-columns:repeat(3,1fr);gap:0 16px;border-top:1px solid #d5dbe1;margin-top:6px;padding-top:6px}
        figure{margin:0;break-inside:avoid}
        figure img{display:block;width:100%;height:auto}
        .next{background:#f3f6f8;border-left:4px solid #b85a12;padding:7px 11px 3px;margin:8px 0 10px}
        ul.drills{list-style:none;margin:0 0 8px;padding:0}
        ul.drills li{display:flex;justify-content:space-between;gap:10px}
        table{border-collapse:collapse;width:100%}
        th{font-weight:normal;text-align:left;color:#5a6672;border-bottom:1px solid #d5dbe1}
        th,td{padding:1px 5px 1px 0;vertical-align:top}
        footer{border-top:1px solid #d5dbe1;margin-top:6px;padding-top:4px}
        footer p{margin:0 0 2px}
        @media (max-width:600px){.top,.charts{grid-template-columns:1fr}}
        @page{margin:9mm}
        @media print{body{font-size:11.6px}main{width:auto;margin:0;padding:0}.lane img{width:85%}h1{font-size:22px;max-height:52px;overflow:hidden}
        h2{font-size:13.5px}p{margin-bottom:4px}}
        """;

    public static void Write(BowlerReport report, Stream output)
    {
        var html = new StringBuilder(1 << 16);
        html.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        html.Append($"<title>Practice report: {Safe(report.Bowler)}</title>\n<style>\n{Style}\n</style>\n</head>\n<body>\n<main>\n");
        Header(html, report);
        html.Append("<div class=\"top\">\n");
        Figure(html, LaneChart.Of(report, 208, 352), "lane");
        html.Append("<div>\n");
        Words(html, report);
        html.Append("</div>\n</div>\n<div class=\"charts\">\n");
        Figure(html, SplitChart.Of(report, 170, 118), "split");
        Figure(html, TrendChart.Of(report, 170, 118), "trend");
        Figure(html, TenShotChart.Of(report, 170, 118), "tens");
        html.Append("</div>\n<footer>\n");
        foreach (var line in PageReport.Lines(report))
        {
            html.Append($"<p>{Safe(line)}</p>\n");
        }

        html.Append("</footer>\n</main>\n</body>\n</html>\n");
        output.Write(Encoding.UTF8.GetBytes(html.ToString()));
    }

    private static void Header(StringBuilder html, BowlerReport report)
    {
        html.Append($"<header>\n<h1>{Safe(report.Bowler)}</h1>\n<p class=\"quiet\">Practice report</p>\n");
        html.Append($"<p class=\"quiet\" style=\"flex-basis:100%;margin:0\">{Safe(ReportWords.Period(report))}, {ReportWords.Of(report.Hand)} hand; ");
        html.Append($"made <time datetime=\"{ReportWords.Day(report.Made)}\">{ReportWords.Day(report.Made)}</time> (UTC)</p>\n</header>\n");
        if (report.Simulated)
        {
            html.Append($"<p class=\"invented\" role=\"note\">{Safe(BowlerReport.SimulatedNotice)}</p>\n");
        }

        if (PageReport.Nothing(report) is { } nothing)
        {
            html.Append($"<p class=\"nothing\" role=\"note\">{Safe(nothing)}</p>\n");
        }
    }

    private static void Words(StringBuilder html, BowlerReport report)
    {
        html.Append("<section>\n<h2>What the record says</h2>\n");
        foreach (var sentence in report.Sentences)
        {
            html.Append($"<p>{Safe(sentence.Text)}</p>\n");
        }

        var next = report.WorkOn;
        html.Append($"</section>\n<section class=\"next\">\n<h2>Work on next</h2>\n<p>{Safe(next.Text)}</p>\n");
        html.Append($"<p><strong>Drill: {Safe(next.DrillName)}</strong> ({Safe(DrillShelf.CommandOf(next.DrillId))})</p>\n</section>\n");
        html.Append($"<section>\n<h2>What was worked on</h2>\n<p>{Safe(PageReport.WorkSummary(report.Work))}</p>\n");
        if (report.Work.Drills.Count > 0)
        {
            html.Append("<ul class=\"drills\">\n");
            foreach (var drill in report.Work.Drills)
            {
                html.Append($"<li><span>{Safe(drill.Name)}</span><span class=\"quiet\">{PageReport.DrillSummary(drill)}</span></li>\n");
            }

            if (report.Work.MoreDrills > 0)
            {
                html.Append($"<li class=\"quiet\">and {ReportWords.Count(report.Work.MoreDrills, "more drill")}</li>\n");
            }

            html.Append("</ul>\n");
        }

        html.Append("</section>\n");
        Targets(html, report);
    }

    private static void Targets(StringBuilder html, BowlerReport report)
    {
        var targets = LaneChart.Drawn(report);
        if (targets.Count == 0)
        {
            return;
        }

        html.Append("<section>\n<h2>Targets</h2>\n<table>\n<thead><tr><th scope=\"col\"></th><th scope=\"col\">board, place</th><th scope=\"col\">held</th>");
        html.Append("<th scope=\"col\">mean miss (95 %)</th><th scope=\"col\">spread (95 %)</th></tr></thead>\n<tbody>\n");
        for (var i = 0; i < targets.Count; i++)
        {
            var target = targets[i];
            html.Append($"<tr><td><strong>{LaneChart.Letters[i]}</strong></td><td>{ReportWords.Short(target.CentreBoard)} {ReportWords.Place(target.DistanceFeet)}</td>");
            html.Append($"<td>{target.Held}/{target.Measured}</td><td>{Safe(ReportWords.LimitedSide(target.MeanMissBoards, report.Hand))}</td>");
            html.Append($"<td>{Safe(ReportWords.Limited(target.SpreadBoards))}</td></tr>\n");
        }

        html.Append("</tbody>\n</table>\n<p class=\"small quiet\">Boards. Spread: standard deviation. Limits take the shots as independent.</p>\n</section>\n");
    }

    internal static void Figure(StringBuilder html, ReportChart chart, string kind)
    {
        html.Append($"<figure class=\"{kind}\">\n<h2>{Safe(chart.Title)}</h2>\n");
        if (chart.Fill is not null)
        {
            // As an image each chart keeps its own names inside; two charts in one document would share theirs.
            var svg = Convert.ToBase64String(Encoding.UTF8.GetBytes(chart.ToSvg()));
            html.Append($"<img alt=\"{Safe(chart.Alternative)}\" width=\"{chart.Width}\" height=\"{chart.Height}\" src=\"data:image/svg+xml;base64,{svg}\">\n");
        }

        html.Append($"<figcaption>{Safe(chart.Caption)}</figcaption>\n</figure>\n");
    }

    internal static string Safe(string text) => HtmlEncoder.Default.Encode(ReportWords.Joined(text));
}
