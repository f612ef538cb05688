using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>
/// For whatever watches over the host. Anybody may ask whether it lives and is ready, because such programs have no token; what was
/// found in detail (folders, room on the disk) is for the coach.
/// </summary>
internal static class HealthApi
{
    public static void Map(IEndpointRouteBuilder app)
    {
        var health = app.MapGroup("/health").ExcludeFromDescription();
        health.MapGet("/live", () => Results.Text("alive\n", "text/plain")).OpenTo(Door.Anyone);
        health.MapGet("/ready", ReadyAsync).OpenTo(Door.Anyone);
    }

    private static async Task<IResult> ReadyAsync(HttpContext context, Readiness readiness)
    {
        var found = await readiness.LookAsync(context.RequestAborted).ConfigureAwait(false);
        var told = Visitor.Of(context) is { Role: Role.Coach } ? found : found with { Checks = [] };
        return TypedResults.Json(told, WebJson.Options, statusCode: found.Ready ? StatusCodes.Status200OK : StatusCodes.Status503ServiceUnavailable);
    }
}
