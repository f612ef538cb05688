using System.Globalization;
using System.Text;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>Records of sessions, and a session's log as a stream that can be taken up again where it was left.</summary>
internal static class SessionApi
{
    private const int Most = 500;

    public static void Map(IEndpointRouteBuilder api)
    {
        var sessions = api.MapGroup("/sessions").WithTags("Sessions");
        sessions.MapGet("/", ListAsync).Describe("Sessions, newest first.", null, "Sessions", 400);
        sessions.MapGet("/{sessionId}", OneAsync).Describe("A session's record: blocks, shots, figures (docs/json.md).", null, "SessionRecord", 404, 409);
        sessions.MapGet("/{sessionId}/shots.csv", ShotsAsync)
            .Describe("The shots that count, as CSV (docs/shots.md). No cell is a formula to a spreadsheet.", new ApiText(null, "Text", 200, ApiTexts.Csv, [404, 409]));
        sessions.MapGet("/{sessionId}/events", EventsAsync).WithMetadata(new Paces.StreamMark())
            .Describe("The session's steps as server-sent events, from the one after Last-Event-ID (or ?after=).", new ApiText(null, "Events", 200, ApiTexts.Events, [400, 404]));
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

    private static Task<IResult> OneAsync(string sessionId, ISessionStore store, ISessionDocuments documents, CancellationToken cancellationToken) =>
        WithRecordAsync(sessionId, store, (setup, drill, record) => Results.Text(documents.Json(setup, drill, record), ApiTexts.Json, Encoding.UTF8), cancellationToken);

    private static Task<IResult> ShotsAsync(string sessionId, ISessionStore store, ISessionDocuments documents, CancellationToken cancellationToken) =>
        WithRecordAsync(
            sessionId, store,
            (setup, _, record) => Results.File(
                Encoding.UTF8.GetBytes(documents.ShotsAsCsv(setup, record)), "text/csv; charset=utf-8",
                $"session-{string.Concat(setup.SessionId.Where(letter => char.IsAsciiLetterOrDigit(letter) || letter == '-'))}.csv"),
            cancellationToken);

    private static async Task<IResult> WithRecordAsync(
        string sessionId, ISessionStore store, Func<SessionSetup, DrillScript, SessionRecord, IResult> answer, CancellationToken cancellationToken)
    {
        if (await store.FindAsync(sessionId, cancellationToken).ConfigureAwait(false) is not { } stored)
        {
            return NoSession(sessionId);
        }

        var drill = DrillReader.Read($"drill of session {sessionId}", Encoding.UTF8.GetBytes(stored.DrillJson));
        if (drill.Value is not { } script)
        {
            return Problems.Refused($"this version does not read the session's drill: {drill.Problems[0]}; its record stays as it is");
        }

        var record = new SessionRecordBuilder();
        await foreach (var entry in store.ReadLogAsync(sessionId, cancellationToken).ConfigureAwait(false))
        {
            record.Add(entry.Events);
        }

        return answer(stored.Setup, script, record.Result());
    }

    private static async Task<IResult> EventsAsync(
        string sessionId, HttpRequest request, ISessionStore store, LiveStations live, TimeProvider clock, CancellationToken cancellationToken, long? after = null)
    {
        if (after is < 0)
        {
            return Problems.BadRequest($"after: found {after}; allowed: 0 or more");
        }

        var header = request.Headers["Last-Event-ID"].ToString();
        var seen = 0L;
        if (header.Length > 0 && !long.TryParse(header, NumberStyles.None, CultureInfo.InvariantCulture, out seen))
        {
            return Problems.BadRequest($"Last-Event-ID: found {FoundText.Quoted(header)}; allowed: the id of an event of this stream, a whole number");
        }

        return await store.FindAsync(sessionId, cancellationToken).ConfigureAwait(false) is { } stored
            ? new LogStream(stored.Setup.SessionId, header.Length > 0 ? seen : after ?? 0, store, live.Find(stored.Setup.Station), clock)
            : NoSession(sessionId);
    }

    private static ProblemHttpResult NoSession(string sessionId) =>
        Problems.NotFound($"session: found {FoundText.Quoted(sessionId)}; allowed: the id of a session (GET /api/sessions lists them)");
}
