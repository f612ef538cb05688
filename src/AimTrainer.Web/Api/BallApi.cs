using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>Balls and the history of their surfaces.</summary>
internal static class BallApi
{
    private const int MostBytes = 16 * 1024;

    public static void Map(IEndpointRouteBuilder api)
    {
        var balls = api.MapGroup("/balls").WithTags("Balls");
        balls.MapGet("/", async (IBallRecord record, CancellationToken cancellationToken, string? bowler = null) =>
            Json(await record.ListBallsAsync(string.IsNullOrWhiteSpace(bowler) ? null : bowler, cancellationToken).ConfigureAwait(false)))
            .Describe("Balls by bowler and name, with the history of their surfaces; of one bowler where one is named.", null, "Balls");
        balls.MapPut("/", KeepAsync).Describe("Keeps what is known of a ball: a new one, or in place of what was known.", "Ball", "BallRecord", 400);
        balls.MapPost("/surfaces", AddAsync).Describe("Adds to the history of a ball's surface.", "BallSurface", "BallRecord", 400, 404);
    }

    private static async Task<IResult> KeepAsync(HttpContext context, IBallRecord record, CancellationToken cancellationToken)
    {
        var body = await RequestBody.ReadAsync(context.Request, MostBytes, cancellationToken).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return body.Answer!;
        }

        var read = BallJson.ReadBall(RequestBody.Name, bytes);
        if (read.Value is not { } ball)
        {
            return Problems.Of(read.Problems);
        }

        await record.KeepBallAsync(ball, cancellationToken).ConfigureAwait(false);
        AuditNote.On(context, $"ball {ball.Name} of {ball.Bowler}");
        return Json((await record.FindBallAsync(ball.Bowler, ball.Name, cancellationToken).ConfigureAwait(false))!);
    }

    private static async Task<IResult> AddAsync(HttpContext context, IBallRecord record, TimeProvider clock, CancellationToken cancellationToken)
    {
        var body = await RequestBody.ReadAsync(context.Request, MostBytes, cancellationToken).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return body.Answer!;
        }

        var read = BallJson.ReadSurface(RequestBody.Name, bytes, clock.GetUtcNow());
        if (read.Value is not { } entry)
        {
            return Problems.Of(read.Problems);
        }

        if (!await record.AddSurfaceAsync(entry.Bowler, entry.Ball, entry.Surface, cancellationToken).ConfigureAwait(false))
        {
            return Problems.NotFound($"ball: found {FoundText.Quoted(entry.Ball)} of {FoundText.Quoted(entry.Bowler)}; allowed: a ball in the record (GET /api/balls lists them)");
        }

        AuditNote.On(context, $"surface of ball {entry.Ball} of {entry.Bowler}");
        return Json((await record.FindBallAsync(entry.Bowler, entry.Ball, cancellationToken).ConfigureAwait(false))!);
    }

    private static IResult Json<T>(T value) => TypedResults.Json(value, WebJson.Options);
}
