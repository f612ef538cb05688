using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>The emergency stop: hides all projection at once.</summary>
internal static class ProjectionApi
{
    public static void Map(IEndpointRouteBuilder api)
    {
        var projection = api.MapGroup("/projection").WithTags("Projection");
        projection.MapGet("/", (EmergencyStop stop) => Json(stop.State)).OpenTo(Door.Known).Describe("Whether all projection is stopped.", null, nameof(ProjectionState));
        projection.MapGet("/live", (EmergencyStop stop, TimeProvider clock) => new ProjectionStream(stop, clock)).OpenTo(Door.Anyone).WithMetadata(new Paces.StreamMark()).Describe(
            "Whether all projection is stopped, as server-sent events: at once, and whenever it changes. For windows elsewhere, which must go dark whatever token they have.",
            new ApiText(null, "Events", 200, ApiTexts.Events, []));
        projection.MapPost("/stop", Stop).Describe("Hides all projection at once, at every station, on every display, until it is released. Takes no body.", null, nameof(ProjectionState));
        projection.MapPost("/release", Release).Describe("Shows projection again, after somebody looked that nobody is in the way of it. Takes no body.", null, nameof(ProjectionState));
    }

    private static IResult Stop(HttpContext context, EmergencyStop stop)
    {
        var stood = stop.State.Stopped;
        var problem = stop.Stop(Visitor.Of(context)!.Name);
        AuditNote.On(context, stood ? "stopped already" : problem is null ? "all projection is stopped" : "all projection is stopped, but that was not kept");
        return problem is null ? Json(stop.State)
            : Problems.NotKept($"all projection IS hidden now, but a host that starts again would not know of it ({problem}): switch the projectors off by hand before the host stops");
    }

    private static IResult Release(HttpContext context, EmergencyStop stop)
    {
        var stood = stop.State.Stopped;
        if (stop.Release() is { } problem)
        {
            return Problems.NotKept($"all projection stays hidden ({problem}): see that the file can be deleted, and release it again");
        }

        AuditNote.On(context, stood ? "projection is released" : "was not stopped");
        return Json(stop.State);
    }

    private static IResult Json(ProjectionState state) => TypedResults.Json(state, WebJson.Options);
}
