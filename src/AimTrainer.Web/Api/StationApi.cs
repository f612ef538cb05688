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
        stations.MapGet("/", All).Describe("All stations.", null, "Stations");
        stations.MapGet("/{station:int}", One).OpenTo(Door.Bowler)
            .Describe("One station: as the coach sees it, or for a bowler what the drill's feedback allows.", null, "Station", 404);
        stations.MapGet("/{station:int}/live", Live).OpenTo(Door.Bowler).WithMetadata(new Paces.StreamMark()).Describe(
            "The station's pictures as server-sent events: the newest at once, then each new one; a beat when nothing is new.",
            new ApiText(null, "Events", 200, ApiTexts.Events, [400, 403, 404]));
        stations.MapGet("/all/live", (LiveStations live, TimeProvider clock) => new LiveStreamOfAll(live, clock)).WithMetadata(new Paces.StreamMark()).Describe(
            "All stations as server-sent events: each event is a list of those that changed, the first holds all.", new ApiText(null, "Events", 200, ApiTexts.Events, []));
        stations.MapPost("/{station:int}/sessions", StartAsync)
            .Describe("Starts a session.", new ApiText("SessionRequest", nameof(SessionStarted), 201, ApiTexts.Json, [404, 409]));
        stations.MapPost("/{station:int}/shots", ShotAsync).OpenTo(Door.Feed).WithMetadata(new Paces.ShotMark())
            .Describe("A shot. The same id twice is one shot, with the same answer.", "Shot", nameof(ShotAnswer), 404, 409);
        stations.MapPost("/{station:int}/actions", ActAsync)
            .Describe("A coach's action. The same id twice in a session is one action, with the same answer.", "Action", nameof(ActionAnswer), 404, 409);
    }

    private static IResult All(LiveStations live) =>
        Json(live.All.Select(one => one.ForCoach()).ToValueList());

    private static IResult One(int station, HttpContext context, LiveStations live) =>
        live.Find(station) is not { } found ? NoStation(station, live)
        : Json(IsBowler(context) ? StationView.ForBowler(found.Station.Snapshot) : found.ForCoach());

    /// <summary>A bowler gets the bowler's view whatever is asked for, and is told so when it was the coach's.</summary>
    private static IResult Live(int station, string? view, HttpContext context, LiveStations live, WebMeters meters, TimeProvider clock) =>
        live.Find(station) is not { } found ? NoStation(station, live)
        : view is not (null or "coach" or "bowler") ? Problems.BadRequest($"view: found {FoundText.Quoted(view)}; allowed: coach, bowler")
        : view == "coach" && IsBowler(context) ? Problems.Forbidden("view: found coach; allowed for a bowler: bowler")
        : new LiveStream(found, forBowler: view == "bowler" || IsBowler(context), meters, clock);

    /// <summary>Whether a session is of a bowler who shares this lane, also when another has the turn.</summary>
    private static bool IsOf(LiveStation found, string session) =>
        found.Station.Snapshot.Turns is { } turns && turns.Places.AsEnumerable().Any(place => place.SessionId == session);

    private static bool IsBowler(HttpContext context) => Visitor.Of(context) is not { Role: Role.Coach };

    private static Task<IResult> StartAsync(
        int station, HttpContext context, LiveStations live, ISessionStore store, DrillShelf shelf, TimeProvider clock, CancellationToken cancellationToken) =>
        SetUpAsync(
            station, context, live, store, shelf, clock, "on", (found, setup, drill) => found.StartAsync(setup, drill, cancellationToken), cancellationToken);

    /// <summary>Reads who is to throw what on a station, and begins it there.</summary>
    /// <param name="station">The station.</param>
    /// <param name="context">The request.</param>
    /// <param name="live">The stations.</param>
    /// <param name="store">Knows the bowler.</param>
    /// <param name="shelf">Knows the drill.</param>
    /// <param name="clock">The time.</param>
    /// <param name="how">What the session does, for the audit: "on", "joins".</param>
    /// <param name="begin">Begins it.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    public static async Task<IResult> SetUpAsync(
        int station, HttpContext context, LiveStations live, ISessionStore store, DrillShelf shelf, TimeProvider clock, string how,
        Func<Station, SessionSetup, DrillSource, Task<StationReply>> begin, CancellationToken cancellationToken)
    {
        if (live.Find(station) is not { } found)
        {
            return NoStation(station, live);
        }

        var body = await RequestBody.ReadAsync(context.Request, MostActionBytes, cancellationToken).ConfigureAwait(false);
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
        AuditNote.On(context, $"session {setup.SessionId} {how} station {station}: {wish.Drill.Script.Id}");
        return await begin(found.Station, setup, wish.Drill).ConfigureAwait(false) switch
        {
            StationReply.Refused refused => Problems.Refused(refused.Why),
            StationReply.NotKept notKept => Problems.NotKept(notKept.Why),
            _ => Json(new SessionStarted(setup.SessionId, setup.Station), StatusCodes.Status201Created),
        };
    }

    private static async Task<IResult> ShotAsync(
        int station, HttpRequest request, LiveStations live, ISessionStore store, CancellationToken cancellationToken, string? session = null, string? aim = null)
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
        if (session is not null && session != setup?.SessionId && !IsOf(found, session))
        {
            return Problems.Refused($"this shot is of session {FoundText.Short(session)}, station {station} has {setup?.SessionId ?? "no session"}: left out");
        }

        if (setup is not null && ShotOwner.WhyNotOf(setup, received) is { } notHis)
        {
            return Problems.Refused(notHis);
        }

        switch (await found.Station.ThrowAsync(received.Shot, session ?? setup?.SessionId, aim, cancellationToken).ConfigureAwait(false))
        {
            case StationReply.OtherAim other:
                return Problems.OtherAim(other.Due);
            case StationReply.Kept { Entry: { } entry }:
                return Json(ShotAnswer.Of(id, entry));
            case StationReply.TakenBefore before:
                return await store.FindShotAsync(before.SessionId, id, cancellationToken).ConfigureAwait(false) is { } first
                    ? Json(ShotAnswer.Of(id, first))
                    : Problems.Refused($"a shot that is equal to {FoundText.Quoted(id)} in all but its id came before; it was taken once");
            case StationReply.Refused refused:
                return Problems.Refused(refused.Why);
            case StationReply.NotKept notKept:
                return Problems.NotKept(notKept.Why);
            default:
                throw new InvalidOperationException("a shot that was kept has a step in the log");
        }
    }

    private static async Task<IResult> ActAsync(
        int station, HttpContext context, LiveStations live, ISessionStore store, TimeProvider clock, CancellationToken cancellationToken, string? session = null)
    {
        if (live.Find(station) is not { } found)
        {
            return NoStation(station, live);
        }

        var body = await RequestBody.ReadAsync(context.Request, MostActionBytes, cancellationToken).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return body.Answer!;
        }

        var setup = found.Station.Snapshot.Setup;
        var read = ActionJson.Read(bytes, setup?.Lane ?? LaneProfileReader.Default, clock.GetUtcNow());
        if (read.Value is not { } input)
        {
            return Problems.Of(read.Problems);
        }

        if (session is not null && session != setup?.SessionId && !IsOf(found, session))
        {
            return Problems.Refused($"this action is of session {FoundText.Short(session)}, station {station} has {setup?.SessionId ?? "no session"}: left out");
        }

        switch (await found.Station.FollowAsync(input, session ?? setup?.SessionId, cancellationToken).ConfigureAwait(false))
        {
            case StationReply.Kept { Entry: { } entry } kept:
                var of = kept.SessionId ?? setup!.SessionId;
                AuditNote.On(context, $"{input.GetType().Name}: step {entry.Sequence} of session {of}");
                return Json(new ActionAnswer(input.ActionId, of, entry.Sequence, entry.Events));
            case StationReply.TakenBefore before:
                AuditNote.On(context, $"{input.GetType().Name}: {input.ActionId} came before");
                return await store.FindActionAsync(before.SessionId, input.ActionId!, cancellationToken).ConfigureAwait(false) is { } first
                    ? Json(new ActionAnswer(input.ActionId, before.SessionId, first.Sequence, first.Events))
                    : Problems.Refused($"the session changed while action {input.ActionId} came: look with GET and send it again when it is still meant");
            case StationReply.Refused refused:
                AuditNote.On(context, $"{input.GetType().Name}: refused");
                return Problems.Refused(refused.Why);
            case StationReply.NotKept notKept:
                return Problems.NotKept(notKept.Why);
            default:
                throw new InvalidOperationException("an action that was kept has a step in the log");
        }
    }

    private static JsonHttpResult<T> Json<T>(T value, int statusCode = StatusCodes.Status200OK) =>
        TypedResults.Json(value, WebJson.Options, statusCode: statusCode);

    /// <summary>There is no such station.</summary>
    public static ProblemHttpResult NoStation(int station, LiveStations live) =>
        Problems.NotFound($"station: found {station}; allowed: 1 to {live.Count}");
}
