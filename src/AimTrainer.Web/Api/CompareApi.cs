using AimTrainer.Reports;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>Balls compared, from the record; a session that is still thrown too.</summary>
internal static class CompareApi
{
    private static readonly (ReportFormat Format, string Ending, string Type)[] Files =
    [
        (ReportFormat.Html, "html", "text/html"), (ReportFormat.Pdf, "pdf", "application/pdf"), (ReportFormat.Png, "png", "image/png"), (ReportFormat.Csv, "csv", ApiTexts.Csv),
        (ReportFormat.Json, "json", ApiTexts.Json),
    ];

    public static void Map(IEndpointRouteBuilder api)
    {
        var compare = api.MapGroup("/compare").WithTags("Comparisons");
        compare.MapGet("/", async ([AsParameters] CompareQuery query, ISessionStore store, TimeProvider clock, CancellationToken cancellationToken) =>
            (IResult)(await ReadAsync(query, store, clock, cancellationToken).ConfigureAwait(false) is var (report, refused) && report is not null
                ? TypedResults.Json(report, WebJson.Options)
                : refused!))
            .Describe("Balls compared: of a bowler's newest sessions, or of sessions that are named (docs/comparison.md).", null, "Comparison", 400, 404);
        foreach (var (format, ending, type) in Files)
        {
            compare.MapGet($"/balls.{ending}", async ([AsParameters] CompareQuery query, ISessionStore store, TimeProvider clock, CancellationToken cancellationToken) =>
            {
                var (report, refused) = await ReadAsync(query, store, clock, cancellationToken).ConfigureAwait(false);
                return report is null ? refused! : File(report, format, ending, type);
            }).Describe($"The same as a report ({ending}).", new ApiText(null, format == ReportFormat.Json ? "Comparison" : "File", 200, type, [400, 404]));
        }
    }

    private static IResult File(BallsReport report, ReportFormat format, string ending, string type)
    {
        using var output = new MemoryStream();
        ReportWriter.Write(report, format, output);
        return Results.File(output.ToArray(), type.StartsWith("text/", StringComparison.Ordinal) ? $"{type}; charset=utf-8" : type, $"balls.{ending}");
    }

    private static async Task<(BallsReport? Report, ProblemHttpResult? Refused)> ReadAsync(
        CompareQuery query, ISessionStore store, TimeProvider clock, CancellationToken cancellationToken)
    {
        if (query.Question(out var problem) is not { } question)
        {
            return (null, Problems.BadRequest(problem!));
        }

        if (question.Bowler is null && question.SessionIds.Count == 0)
        {
            return (null, Problems.BadRequest("bowler: found nothing; allowed: a bowler, or a session, of the record"));
        }

        var answer = await new BallsReader(store, clock).ReadAsync(question, cancellationToken).ConfigureAwait(false);
        return answer.Report is { } report ? (report, null) : (null, Problems.NotFound(answer.Problem!));
    }
}
