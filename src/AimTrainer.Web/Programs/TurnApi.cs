using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>Several bowlers on one lane: who comes, and what people change in the order.</summary>
internal static class TurnApi
{
    private const int MostBytes = 32 * 1024, LongestId = 200;

    private static readonly string[] Kinds = ["leave", "return", "swap", "skip", "give", "length"];

    public static void Map(IEndpointRouteBuilder api)
    {
        var stations = api.MapGroup("/stations").WithTags("Turns");
        stations.MapPost("/{station:int}/bowlers", JoinAsync)
            .Describe("One more bowler comes to the lane, with a session of the bowler's own, and takes turns with those who are there.", new ApiText("SessionRequest", nameof(SessionStarted), 201, ApiTexts.Json, [404, 409]));
        stations.MapPost("/{station:int}/turns", TurnAsync).Describe("Changes the order of a lane, or whose turn it is.", "TurnChange", nameof(Done), 404, 409);
        api.MapGroup("/needs").WithTags("Turns").MapGet("/", async (NeedBoard board, CancellationToken cancellationToken) =>
            TypedResults.Json(await board.LookAsync(cancellationToken).ConfigureAwait(false), WebJson.Options))
            .Describe("Who needs the coach first, and why, from what was measured alone.", null, "Needs");
    }

    private static Task<IResult> JoinAsync(
        int station, HttpContext context, LiveStations live, ISessionStore store, DrillShelf shelf, TimeProvider clock, CancellationToken cancellationToken) =>
        StationApi.SetUpAsync(
            station, context, live, store, shelf, clock, "joins", (found, setup, drill) => found.JoinAsync(setup, drill, cancellationToken), cancellationToken);

    private static async Task<IResult> TurnAsync(int station, HttpContext context, LiveStations live, CancellationToken cancellationToken)
    {
        if (live.Find(station) is not { } found)
        {
            return StationApi.NoStation(station, live);
        }

        var (wish, answer) = await BodyReading.ReadAsync(context.Request, MostBytes, Read, cancellationToken).ConfigureAwait(false);
        if (wish is null)
        {
            return answer!;
        }

        AuditNote.On(context, $"turns of station {station}: {wish.Change.GetType().Name}");
        return await found.Station.TurnAsync(wish.Change, wish.Seen, cancellationToken).ConfigureAwait(false) switch
        {
            StationReply.Refused refused => Problems.Refused(refused.Why),
            StationReply.NotKept notKept => Problems.NotKept(notKept.Why),
            _ => TypedResults.Json(Done.It, WebJson.Options),
        };
    }

    private static TurnWish? Read(ObjectReader json)
    {
        var kind = json.Word("kind", Kinds);
        var seen = json.OptionalWhole("seen", 0, int.MaxValue);
        TurnChange? change = kind switch
        {
            "leave" => Session(json) is { } id ? new TurnChange.Leave(id) : null,
            "return" => Session(json) is { } id ? new TurnChange.Return(id) : null,
            "give" => Session(json) is { } id ? new TurnChange.Give(id) : null,
            "swap" => Session(json) is { } id && json.Text("with", LongestId) is { } with ? new TurnChange.Swap(id, with) : null,
            "skip" => new TurnChange.Skip(),
            "length" => json.Whole("shotsATurn", 1, Lineup.MostShotsATurn) is { } shots ? new TurnChange.Length((int)shots) : null,
            _ => null,
        };
        return change is null ? null : new TurnWish(change, (int?)seen);
    }

    private static string? Session(ObjectReader json) => json.Text("session", LongestId);
}
