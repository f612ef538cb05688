using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>Stations: what they show, shots, coach's actions, a new session, the live stream.</summary>
internal static class StationApi
{
    private const int MostShotBytes = 16 * 1024, MostActionBytes = 32 * 1024;

    public static void Map(IEndpointRouteBuilder api)
    {
        var stations = api.MapGroup("/stations").WithTags("Stations");
        stations.MapGet("/", All).WithSummary("All stations.");
        stations.MapGet("/{station:int}", One).WithSummary("One station, as the coach sees it.");
        stations.MapGet("/{station:int}/live", Live).WithSummary("The station's pictures as server-sent events: the newest at once, then each new one; a beat when nothing is new.");
        stations.MapGet("/all/live", (LiveStations live, TimeProvider clock) => new LiveStreamOfAll(live, clock))
            .WithSummary("All stations as server-sent events: each event is a list of those that changed, the first holds all.");
        stations.MapPost("/{station:int}/sessions", StartAsync).WithSummary("Starts a session.");
        stations.MapPost("/{station:int}/shots", ShotAsync).WithSummary("A shot. The same id twice is one shot, with the same answer.");
        stations.MapPost("/{station:int}/actions", ActAsync).WithSummary("A coach's action.");
    }

    private static IResult All(LiveStations live) =>
        Json(live.All.Select(one => StationView.ForCoach(one.Station.Snapshot)).ToValueList());

    private static IResult One(int station, LiveStations live) =>
        live.Find(station) is { } found ? Results.Bytes(found.Picture.Coach.ToArray(), "application/json") : NoStation(station, live);

    private static IResult Live(int station, string? view, LiveStations live, TimeProvider clock) =>
        live.Find(station) is not { } found ? NoStation(station, live)
        : view is null or "coach" or "bowler" ? new LiveStream(found, forBowler: view == "bowler", clock)
        : Problems.BadRequest($"view: found \"{view}\"; allowed: coach, bowler");

    private static async Task<IResult> StartAsync(
        int station, HttpRequest request, LiveStations live, ISessionStore store, DrillShelf shelf, TimeProvider clock, CancellationToken cancellationToken)
    {
        if (live.Find(station) is not { } found)
        {
            return NoStation(station, live);
        }

        var body = await RequestBody.ReadAsync(request, MostActionBytes, cancellationToken).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return body.Answer!;
        }

        var read = SessionWishJson.Read(bytes, shelf);
        if (read.Value is not { } wish)
        {
            return Problems.Of(read.Problems);
        }

        var known = await store.FindBowlerAsync(wish.Bowler, cancellationToken).ConfigureAwait(false);
        var setup = wish.ToSetup(station, known, clock.GetUtcNow());
        return await found.Station.StartAsync(setup, wish.Drill, cancellationToken).ConfigureAwait(false) switch
        {
            StationReply.Refused refused => Problems.Refused(refused.Why),
            StationReply.NotKept notKept => Problems.NotKept(notKept.Why),
            _ => Json(new { setup.SessionId, setup.Station }, StatusCodes.Status201Created),
        };
    }

    private static async Task<IResult> ShotAsync(
        int station, HttpRequest request, LiveStations live, ISessionStore store, CancellationToken cancellationToken, string? session = null)
    {
        if (live.Find(station) is not { } found)
        {
            return NoStation(station, live);
        }

        var body = await RequestBody.ReadAsync(request, MostShotBytes, cancellationToken).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return body.Answer!;
        }

        var setup = found.Station.Snapshot.Setup;
        var read = ShotJson.Read(RequestBody.Name, bytes, setup?.Lane ?? LaneProfileReader.Default, ShotSource.Sensor);
        if (read.Value is not { } received)
        {
            return Problems.Of(read.Problems);
        }

        if (received.Shot.Id is not { } id)
        {
            return Problems.BadRequest("$.id: found none; allowed: a name for this shot that no other shot has, so that it counts once however often it is sent");
        }

        // A page that was away sends what was tapped meanwhile; it must not land in somebody else's session.
        if (session is not null && session != setup?.SessionId)
        {
            return Problems.Refused($"this shot is of session {session}, station {station} has {setup?.SessionId ?? "no session"}: left out");
        }

        if (setup is not null && ShotOwner.WhyNotOf(setup, received) is { } notHis)
        {
            return Problems.Refused(notHis);
        }

        switch (await found.Station.ThrowAsync(received.Shot, cancellationToken).ConfigureAwait(false))
        {
            case StationReply.Kept { Entry: { } entry }:
                return Json(ShotAnswer.Of(id, entry));
            case StationReply.TakenBefore:
                return await FirstAnswerAsync(id, setup!.SessionId, store, cancellationToken).ConfigureAwait(false);
            case StationReply.Refused refused:
                return Problems.Refused(refused.Why);
            case StationReply.NotKept notKept:
                return Problems.NotKept(notKept.Why);
            default:
                throw new InvalidOperationException("a shot that was kept has a step in the log");
        }
    }

    private static async Task<IResult> ActAsync(
        int station, HttpRequest request, LiveStations live, TimeProvider clock, CancellationToken cancellationToken)
    {
        if (live.Find(station) is not { } found)
        {
            return NoStation(station, live);
        }

        var body = await RequestBody.ReadAsync(request, MostActionBytes, cancellationToken).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return body.Answer!;
        }

        var read = ActionJson.Read(bytes, found.Station.Snapshot.Setup?.Lane ?? LaneProfileReader.Default, clock.GetUtcNow());
        if (read.Value is not { } input)
        {
            return Problems.Of(read.Problems);
        }

        return await found.Station.FollowAsync(input, cancellationToken).ConfigureAwait(false) switch
        {
            StationReply.Refused refused => Problems.Refused(refused.Why),
            StationReply.NotKept notKept => Problems.NotKept(notKept.Why),
            _ => Results.Bytes(JsonSerializer.SerializeToUtf8Bytes(StationView.ForCoach(found.Station.Snapshot), WebJson.Options), "application/json"),
        };
    }

    /// <summary>The answer that a shot got when it first came: its step is in the log.</summary>
    private static async Task<IResult> FirstAnswerAsync(string id, string sessionId, ISessionStore store, CancellationToken cancellationToken)
    {
        await foreach (var entry in store.ReadLogAsync(sessionId, cancellationToken).ConfigureAwait(false))
        {
            if (entry.Input is SessionInput.ShotThrown { Shot.Id: { } known } && known == id)
            {
                return Json(ShotAnswer.Of(id, entry));
            }
        }

        return Problems.Refused($"a shot that is equal to \"{id}\" in all but its id came before; it was taken once");
    }

    private static JsonHttpResult<T> Json<T>(T value, int statusCode = StatusCodes.Status200OK) =>
        TypedResults.Json(value, WebJson.Options, statusCode: statusCode);

    private static ProblemHttpResult NoStation(int station, LiveStations live) =>
        Problems.NotFound($"station: found {station}; allowed: 1 to {live.Count}");
}
