using AimTrainer.Domain;
using AimTrainer.Motion;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>Planning: where a ball goes, what a line means, where to aim, today's lane; and a drill made of a line.</summary>
internal static class PlanApi
{
    private const double UsualDownlane = 40;

    public static void Map(IEndpointRouteBuilder api)
    {
        var plan = api.MapGroup("/plan").WithTags("Planning");
        plan.MapPost("/drill", DrillAsync).Describe("Makes a drill of the user's own from a shipped one and a line.", "PlanDrill", nameof(DrillSummary), 404);
        plan.MapGet("/scatter/{bowler}", ScatterAsync).Describe("A bowler's usual throw and scatter, from the record.", null, nameof(ScatterFound), 400, 404, 409);
        plan.MapGet("/crossings/{sessionId}", CrossingsAsync).Describe("Where the balls of a session were seen.", null, nameof(SessionCrossings), 404);

        var only = api.MapGroup("/plan").WithTags("Planning").WithMetadata(new OnlyComputes());
        only.MapPost("/lane", LaneAsync).Describe("The oil of a lane to be drawn; without one the program's own invented pattern.", "PlanLane", nameof(LaneMap));
        only.MapPost("/lane/check", CheckAsync).Describe("Says everything that is wrong with a lane's text, with line and JSON path.", "PlanLaneFile", nameof(LaneChecked));
        only.MapPost("/path", PathAsync).Describe("Where one ball goes, as aimtrainer path --json tells it.", "PlanPath", nameof(PathAnswer));
        only.MapPost("/line", LineAsync).Describe("A straight line, as aimtrainer line --json tells it.", "PlanLine", nameof(LineAnswer));
        only.MapPost("/aim", AimAsync)
            .Describe("Where to aim: progress, then the answer as aimtrainer aim --json tells it. Ends when the reader leaves.",
                new ApiText("PlanAim", "Events", 200, ApiTexts.Events, []));
        only.MapPost("/fit", FitAsync)
            .Describe("Today's lane from a session's shots: progress, then the answer as aimtrainer fit-lane --json tells it.",
                new ApiText("PlanFit", "Events", 200, ApiTexts.Events, [404]));
    }

    private static Task<IResult> LaneAsync(HttpRequest request, CancellationToken cancellationToken) => AnswerAsync(
        request,
        (file, body) => Done(body, PlanReader.Lane(file, body)),
        lane => TypedResults.Json(LaneMap.Of(lane.Best), WebJson.Options),
        cancellationToken);

    private static async Task<IResult> CheckAsync(HttpRequest request, CancellationToken cancellationToken)
    {
        var body = await RequestBody.ReadAsync(request, JsonFile.MostBytes, cancellationToken).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return body.Answer!;
        }

        var read = LaneSurfaceReader.Read("lane", bytes);
        return TypedResults.Json(new LaneChecked(read.Value is not null, read.Problems), WebJson.Options);
    }

    private static Task<IResult> PathAsync(HttpRequest request, CancellationToken cancellationToken) => AnswerAsync(
        request,
        (file, body) =>
        {
            var release = body.Object("release") is { } part ? ReleaseReader.Part(part) : null;
            var (ball, lane) = (PlanReader.Ball(body), PlanReader.Lane(file, body));
            return Done(body, release is { } thrown && ball is not null && lane is not null ? new Tuple<Release, Ball, LaneBelief>(thrown, ball, lane) : null);
        },
        read => TypedResults.Json(PathAnswer.Of(Paths.Trace(read.Item3.Best, read.Item2, read.Item1)), WebJson.Options),
        cancellationToken);

    private static Task<IResult> LineAsync(HttpRequest request, CancellationToken cancellationToken) =>
        AnswerAsync(request, PlanLine.Read, line => line.Answer(), cancellationToken);

    private static Task<IResult> AimAsync(HttpRequest request, PlanWork work, TimeProvider clock, CancellationToken cancellationToken) => AnswerAsync(
        request,
        (file, body) =>
        {
            var (bowler, ball, lane) = (PlanReader.Bowler(body), PlanReader.Ball(body), PlanReader.Lane(file, body));
            var (window, grid) = (PlanReader.Window(body), PlanReader.Grid(body));
            var downlane = body.OptionalNumber("downlaneFeet", 20, 59) ?? UsualDownlane;
            var seed = body.OptionalWhole("seed", 0, int.MaxValue) ?? 1;
            return Done(body, bowler is null || ball is null || lane is null || window is null || grid is null ? null : new Tuple<LaneBelief, Ball, AimBowler, AimSettings>(
                lane, ball, bowler, new AimSettings { Window = window, Grid = grid, DownlaneFeet = downlane, Seed = (ulong)seed, Cores = PlanWork.Cores }));
        },
        read => new PlanStream(work, clock, (progress, ct) => AimAnswer.Of(
            AimAdvisor.Advise(read.Item1, read.Item2, read.Item3, read.Item4, progress, ct),
            read.Item3, "as sent", read.Item4, read.Item1.Sheet.ArrowsFeet, read.Item1.Covariance is not null, null)),
        cancellationToken);

    private static async Task<IResult> FitAsync(HttpRequest request, PlanWork work, ISessionStore store, TimeProvider clock, CancellationToken cancellationToken)
    {
        var body = await RequestBody.ReadAsync(request, JsonFile.MostBytes, cancellationToken).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return body.Answer!;
        }

        var read = PlanReader.Read(bytes, PlanFit.Read);
        return read.Value is not { } fit ? Problems.Of(read.Problems)
            : await store.FindAsync(fit.Session, cancellationToken).ConfigureAwait(false) is not { } stored ? NoSession(fit.Session)
            : fit.Answer(work, clock, stored.Setup.Hand, await PlanShots.ReadAsync(store, stored.Setup.SessionId, cancellationToken).ConfigureAwait(false));
    }

    /// <remarks>The framework leaves a slash in a name as it is in the address, so that it is no step of the path.</remarks>
    private static async Task<IResult> ScatterAsync(
        string bowler, ISessionStore store, CancellationToken cancellationToken, double? axisRotationDeg = null, double? axisTiltDeg = null)
    {
        if (axisRotationDeg is not (null or (>= -90 and <= 90)) || axisTiltDeg is not (null or (>= 0 and <= Release.MostTiltDegrees)))
        {
            return Problems.BadRequest(FormattableString.Invariant(
                $"axis: found rotation {axisRotationDeg}, tilt {axisTiltDeg}; allowed: rotation -90 to 90, tilt 0 to {Release.MostTiltDegrees} degrees"));
        }

        var name = bowler.Replace("%2F", "/", StringComparison.OrdinalIgnoreCase);
        var found = await BowlerScatter.ReadAsync(store, name, axisRotationDeg, axisTiltDeg, cancellationToken).ConfigureAwait(false);
        return found switch
        {
            { Recorded: null } => Problems.NotFound($"bowler: found {FoundText.Quoted(name)}; allowed: a name with sessions in the record (GET /api/bowlers lists them)"),
            { Recorded: { Bowler: { } usual, Shots: var shots } } => TypedResults.Json(new ScatterFound(AimBowlerAnswer.Of(usual), shots, found.Simulated), WebJson.Options),
            { Recorded.Problem: RecordedBowler.NoRotation } => Problems.Refused($"{RecordedBowler.NoRotation}; allowed: give it, axisRotationDeg"),
            _ => Problems.Refused($"{found.Recorded.Problem}; allowed: give speed, revs and spreads by hand"),
        };
    }

    private static async Task<IResult> CrossingsAsync(string sessionId, ISessionStore store, CancellationToken cancellationToken)
    {
        if (await store.FindAsync(sessionId, cancellationToken).ConfigureAwait(false) is not { } stored)
        {
            return NoSession(sessionId);
        }

        var shots = await PlanShots.ReadAsync(store, sessionId, cancellationToken).ConfigureAwait(false);
        var seen = shots.Select(shot => new ShotCrossings(
            shot.Number, FitShots.BoardsOf(shot.Shot).Select(place => new ShotCrossing(place.Feet, place.Board)).ToValueList())).Where(shot => shot.Places.Count > 0);
        return TypedResults.Json(new SessionCrossings(stored.Setup.Bowler, stored.Setup.Hand, stored.Setup.Simulated, seen.ToValueList()), WebJson.Options);
    }

    private static Task<IResult> DrillAsync(HttpContext context, DrillShelf shelf, CancellationToken cancellationToken) =>
        AnswerAsync(context.Request, PlanDrill.Read, wish => wish.Keep(context, shelf), cancellationToken);

    /// <summary>Reads the body and answers, or says what is wrong with it.</summary>
    private static async Task<IResult> AnswerAsync<T>(
        HttpRequest request, Func<JsonFile, ObjectReader, T?> read, Func<T, IResult> answer, CancellationToken cancellationToken)
        where T : class
    {
        var body = await RequestBody.ReadAsync(request, JsonFile.MostBytes, cancellationToken).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return body.Answer!;
        }

        var found = PlanReader.Read(bytes, read);
        return found.Value is { } value ? answer(value) : Problems.Of(found.Problems);
    }

    private static T? Done<T>(ObjectReader body, T? value)
    {
        body.Done();
        return value;
    }

    private static ProblemHttpResult NoSession(string sessionId) =>
        Problems.NotFound($"session: found {FoundText.Quoted(sessionId)}; allowed: the id of a session (GET /api/sessions lists them)");
}
