using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>Records of sessions, and a session's log as a stream that can be taken up again where it was left.</summary>
internal static class SessionApi
{
    private const int Most = 500;

    public static void Map(IEndpointRouteBuilder api)
    {
        var sessions = api.MapGroup("/sessions").WithTags("Sessions");
        sessions.MapGet("/", ListAsync).WithSummary("Sessions, newest first.");
        sessions.MapGet("/{sessionId}/events", EventsAsync).WithSummary("The session's steps as server-sent events, from the one after Last-Event-ID (or ?after=).");
    }

    private static async Task<IResult> ListAsync(
        ISessionStore store, CancellationToken cancellationToken, string? bowler = null, int? station = null, bool? ended = null, int limit = 100)
    {
        if (limit is < 1 or > Most)
        {
            return Problems.BadRequest($"limit: found {limit}; allowed: 1 to {Most}");
        }

        var filter = new SessionFilter { Bowler = bowler, Station = station, Ended = ended, Limit = limit };
        return TypedResults.Json(await store.ListAsync(filter, cancellationToken).ConfigureAwait(false), WebJson.Options);
    }

    private static async Task<IResult> EventsAsync(
        string sessionId, HttpRequest request, ISessionStore store, LiveStations live, TimeProvider clock, CancellationToken cancellationToken, long? after = null)
    {
        if (after is < 0)
        {
            return Problems.BadRequest($"after: found {after}; allowed: 0 or more");
        }

        if (await store.FindAsync(sessionId, cancellationToken).ConfigureAwait(false) is not { } stored)
        {
            return Problems.NotFound($"session: found \"{sessionId}\"; allowed: the id of a session (GET /api/sessions lists them)");
        }

        var last = long.TryParse(request.Headers["Last-Event-ID"], out var seen) && seen >= 0 ? seen : after ?? 0;
        return new LogStream(stored.Setup.SessionId, last, store, live.Find(stored.Setup.Station), clock);
    }
}
