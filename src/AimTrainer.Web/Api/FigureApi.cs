using System.Text;
using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Reports;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>Figures, trends and reports, the same documents as the commands print.</summary>
internal static class FigureApi
{
    private static readonly (ReportFormat Format, string Ending, string MediaType, string Schema)[] Formats =
    [
        (ReportFormat.Html, "html", "text/html", "Text"), (ReportFormat.Pdf, "pdf", "application/pdf", "Bytes"), (ReportFormat.Png, "png", "image/png", "Bytes"),
        (ReportFormat.Csv, "csv", ApiTexts.Csv, "Text"), (ReportFormat.Json, "json", ApiTexts.Json, "Report"),
    ];

    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/sessions/{sessionId}/figures", SessionAsync).WithTags("Figures")
            .Describe("A session's accuracy and where its misses came from, also while it is under way (docs/analysis.md).", null, nameof(SessionFigures), 404);
        var bowlers = api.MapGroup("/bowlers/{name}").WithTags("Figures");
        bowlers.MapGet("/figures", FiguresAsync)
            .Describe("A bowler's accuracy, apart by drill, block, ball, line, part of the lane, speed, early and late (docs/analysis.md).", null, nameof(BowlerFigures), 400, 404);
        bowlers.MapGet("/trend", TrendAsync).Describe("Whether a bowler is getting better, and a program against it (docs/trends.md).", null, nameof(BowlerTrend), 400, 404);
        foreach (var (format, ending, mediaType, schema) in Formats)
        {
            bowlers.MapGet($"/report.{ending}", (string name, [AsParameters] PracticeAsked asked, ReportReader reader, CancellationToken cancellationToken) =>
                    ReportAsync(name, asked, format, $"{mediaType}{(mediaType.StartsWith("text", StringComparison.Ordinal) ? "; charset=utf-8" : "")}", ending, reader, cancellationToken))
                .Describe("One page for a bowler: what was worked on, where the shots went, why, and what to work on next (docs/reports.md).",
                    new ApiText(null, schema, 200, mediaType, [400, 404]));
        }
    }

    private static async Task<IResult> SessionAsync(string sessionId, ISessionStore store, CancellationToken cancellationToken) =>
        await SessionFiguresReader.ReadAsync(store, sessionId, cancellationToken).ConfigureAwait(false) is { } figures
            ? Document(figures, FigureJson.Plain)
            : Problems.NotFound($"session: found {FoundText.Quoted(sessionId)}; allowed: the id of a session (GET /api/sessions lists them)");

    private static Task<IResult> FiguresAsync(string name, [AsParameters] PracticeAsked asked, ProgressReader reader, CancellationToken cancellationToken) =>
        OfAsync(name, asked, query => reader.FiguresAsync(query.Filter, query.By, cancellationToken), figures => Document(figures, FigureJson.Plain));

    private static Task<IResult> TrendAsync(string name, [AsParameters] PracticeAsked asked, ProgressReader reader, CancellationToken cancellationToken) =>
        OfAsync(name, asked, query => reader.TrendAsync(query.Filter, query.Plan, cancellationToken), trend => Document(trend, FigureJson.Exact));

    private static Task<IResult> ReportAsync(
        string name, PracticeAsked asked, ReportFormat format, string mediaType, string ending, ReportReader reader, CancellationToken cancellationToken) =>
        OfAsync(name, asked, query => reader.ReadAsync(query.Filter, cancellationToken), report =>
        {
            using var whole = new MemoryStream();
            ReportWriter.Write(report, format, whole);
            var letters = string.Concat(report.Bowler.Where(letter => char.IsAsciiLetterOrDigit(letter) || letter == '-'));
            return Results.File(whole.ToArray(), mediaType, $"report{(letters.Length > 0 ? "-" : "")}{letters}.{ending}");
        });

    private static async Task<IResult> OfAsync<T>(string name, PracticeAsked asked, Func<PracticeQuery, Task<T?>> read, Func<T, IResult> answer)
        where T : class
    {
        var (query, problem) = PracticeQuery.Read(BowlerAddress.NameOf(name), asked);
        return query is null ? Problems.BadRequest(problem)
            : await read(query).ConfigureAwait(false) is { } found ? answer(found)
            : Problems.NotFound($"bowler: found {FoundText.Quoted(name)}; allowed: a name in the record (GET /api/bowlers lists them)");
    }

    private static IResult Document<T>(T value, JsonSerializerOptions options) => Results.Text(JsonSerializer.Serialize(value, options), ApiTexts.Json, Encoding.UTF8);
}
