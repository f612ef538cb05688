using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>Displays on other machines: their stream, and their tokens.</summary>
internal static class DisplayApi
{
    private const int MostBytes = 4 * 1024, LongestName = 100;

    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/stations/{station:int}/displays/{kind}", Look).OpenTo(Door.Display).WithMetadata(new Paces.StreamMark()).WithTags("Displays").Describe(
            "What a display of the station shows, as server-sent events: hello, projection, update, beat, end (docs/displays.md).",
            new ApiText(null, "Events", 200, ApiTexts.Events, [400, 403, 404, 409]));
        var tokens = api.MapGroup("/access/displays").WithTags("Displays");
        tokens.MapGet("/", (DisplayTokens all, LookingDisplays looking) => Json(all.All.AsEnumerable().Select(token => Listed(token, looking)).ToValueList()))
            .Describe("The displays that have a token; the tokens themselves are not kept.", null, "Displays");
        tokens.MapPost("/", MakeAsync).Describe("Makes a token for a display of one station. It is shown this once.", "NewDisplay", nameof(DisplayTokenMade), 400, 404, 409);
        tokens.MapDelete("/{id}", Revoke).Describe("Revokes a token: the display goes dark.", null, nameof(Done), 404);
    }

    private static IResult Look(
        int station, string kind, HttpContext context, LiveStations live, DisplayStreamParts parts, int? protocol = null, string? session = null, long? after = null)
    {
        if (live.Find(station) is not { } found)
        {
            return StationApi.NoStation(station, live);
        }

        if (KindOf(kind) is not { } wanted)
        {
            return Problems.NotFound($"kind: found {FoundText.Quoted(kind)}; allowed: overhead, projector");
        }

        if (Visitor.Of(context) is { Role: Role.Display, Screen: var own } && own != wanted)
        {
            return Problems.Forbidden($"kind: found {kind}; allowed: {Word(own!.Value)}, the token's own");
        }

        if (protocol is { } spoken and not DisplayHello.Spoken)
        {
            return Problems.Refused(
                $"protocol: found {spoken}; allowed: {DisplayHello.Spoken}: the {(spoken > DisplayHello.Spoken ? "display is newer than this host" : "host is newer than this display")} "
                + $"({DisplayStream.Version}); use the same version of aimtrainer for both");
        }

        return new DisplayStream(found, wanted, (session, after ?? 0), parts);
    }

    private static async Task<IResult> MakeAsync(HttpContext context, LiveStations live, DisplayTokens tokens, LookingDisplays looking)
    {
        var body = await RequestBody.ReadAsync(context.Request, MostBytes, context.RequestAborted).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return body.Answer!;
        }

        var file = JsonFile.Read(RequestBody.Name, bytes);
        var wish = file.Root is { } root && ObjectReader.Of(file, root) is { } json ? ReadWish(json) : (null, null, null);
        if (file.HasProblems || wish is not ({ } name, { } station, { } kind))
        {
            return Problems.Of(file.Problems);
        }

        if (live.Find(station) is null)
        {
            return StationApi.NoStation(station, live);
        }

        if (tokens.Make(name, station, kind) is not { } made)
        {
            return Problems.Refused($"there are {DisplayTokens.Most} tokens already: revoke one that is not used");
        }

        AuditNote.On(context, $"token {made.Kept.Id} for the {Word(kind)} display of station {station}");
        return Json(new DisplayTokenMade(Listed(made.Kept, looking), made.Token));
    }

    private static (string? Name, int? Station, ScreenKind? Kind) ReadWish(ObjectReader json)
    {
        var wish = (json.Text("name", LongestName), (int?)json.Whole("station", 1, 64), json.Word("kind", "overhead", "projector") is { } word ? KindOf(word) : null);
        json.Done();
        return wish;
    }

    private static IResult Revoke(string id, HttpContext context, DisplayTokens tokens)
    {
        if (!tokens.Revoke(id))
        {
            return Problems.NotFound($"display: found {FoundText.Quoted(id)}; allowed: one of GET /api/access/displays");
        }

        AuditNote.On(context, $"token {id} revoked");
        return Json(Done.It);
    }

    private static DisplayListed Listed(DisplayToken token, LookingDisplays looking) =>
        new(token.Id, token.Name, token.Station, token.Kind, token.Since, looking.Of(token.Id));

    private static ScreenKind? KindOf(string word) => word switch
    {
        "overhead" => ScreenKind.Overhead,
        "projector" => ScreenKind.Projector,
        _ => null,
    };

    private static string Word(ScreenKind kind) => kind == ScreenKind.Overhead ? "overhead" : "projector";

    private static IResult Json<T>(T value) => TypedResults.Json(value, WebJson.Options);
}
