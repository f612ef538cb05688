using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>Bowlers and what the record knows of them.</summary>
internal static class BowlerApi
{
    /// <summary>How many a list holds at most.</summary>
    public const int Most = 1000;

    public static void Map(IEndpointRouteBuilder api)
    {
        var bowlers = api.MapGroup("/bowlers").WithTags("Bowlers");
        bowlers.MapGet("/", async (ISessionStore store, CancellationToken cancellationToken) =>
            TypedResults.Json(await store.ListBowlersAsync(Most, cancellationToken).ConfigureAwait(false), WebJson.Options))
            .Describe("Bowlers, those who threw last first.", null, "Bowlers");
        bowlers.MapGet("/{name}", OneAsync).Describe("The usual throw of a bowler, as far as the record knows it.", null, "Bowler", 404);
    }

    private static async Task<IResult> OneAsync(string name, ISessionStore store, CancellationToken cancellationToken) =>
        await store.FindBowlerAsync(BowlerAddress.NameOf(name), cancellationToken).ConfigureAwait(false) is { } bowler
            ? TypedResults.Json(bowler, WebJson.Options)
            : Problems.NotFound($"bowler: found {FoundText.Quoted(name)}; allowed: a name in the record (GET /api/bowlers lists them)");
}
