using System.Text;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>Setting projectors up: a calibration attaches from its own process, a coach's page acts in it.</summary>
internal static class ProjectorApi
{
    private const int MostActionBytes = 4 * CalibrationAnswer.LongestAction, MostStateBytes = 256 * 1024;

    public static void Map(IEndpointRouteBuilder api)
    {
        var projectors = api.MapGroup("/projectors").WithTags("Projectors");
        projectors.MapGet("/", (AttachedProjectors all) => TypedResults.Json(all.All.Select(Listed).ToValueList(), WebJson.Options))
            .Describe("The projectors that are being calibrated and can be set up from here.", null, "Projectors");
        projectors.MapGet("/live", (AttachedProjectors all, TimeProvider clock) => new ProjectorsLiveStream(all, clock)).WithMetadata(new Paces.StreamMark()).Describe(
            "The same with their states, as server-sent events: the newest at once, then after each change.", new ApiText(null, "Events", 200, ApiTexts.Events, []));
        projectors.MapGet("/{station:int}/{projector}", One).Describe("The state of a calibration (docs/calibration.md).", null, "Calibration", 404);
        projectors.MapPost("/{station:int}/{projector}/actions", ActAsync)
            .Describe("An action in a calibration; the answer is the state after it.", "CalibrationAction", "Calibration", 404, 504);
        projectors.MapPost("/{station:int}/{projector}/attachment", AttachAsync).OpenTo(Door.Projector).WithMetadata(new Paces.StreamMark()).Describe(
            "Opens a calibration of another process to this host's pages, for as long as the answer is read: server-sent events with the actions to do.",
            new ApiText("CalibrationAttachment", "Events", 200, ApiTexts.Events, [404]));
        projectors.MapPut("/{station:int}/{projector}/state", ReportAsync).OpenTo(Door.Projector)
            .Describe("Reports the state of an attached calibration, and what came of actions.", "CalibrationReport", nameof(Done), 404, 409);
    }

    private static ProjectorListed Listed(AttachedProjector one) => new(one.Station, one.Projector, one.Since, one.State.GetProperty("version").GetInt64());

    private static IResult One(int station, string projector, AttachedProjectors all) =>
        all.Find(station, projector) is { } found ? Results.Text(found.State.GetRawText(), ApiTexts.Json, Encoding.UTF8) : NoProjector(station, projector, all);

    private static async Task<IResult> ActAsync(int station, string projector, HttpContext context, AttachedProjectors all, CancellationToken cancellationToken)
    {
        if (all.Find(station, projector) is not { } found)
        {
            return NoProjector(station, projector, all);
        }

        var body = await RequestBody.ReadAsync(context.Request, MostActionBytes, cancellationToken).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return body.Answer!;
        }

        // What an action is, the calibration itself knows best; that it is one object keeps its line whole.
        var file = JsonFile.Read(RequestBody.Name, bytes);
        if (file.Root is not { } root || ObjectReader.Of(file, root) is not { } json || json.Text("kind", 40) is not { } kind)
        {
            return Problems.Of(file.Problems);
        }

        AuditNote.On(context, $"{FoundText.Short(kind)}, {found}");
        var answer = await found.DoAsync(Encoding.UTF8.GetString(bytes), cancellationToken).ConfigureAwait(false);
        if (answer is { Understood: true } && kind == "nudge")
        {
            // Moving the crosshair changes nothing that is kept, and comes by the hundred.
            AuditNote.Quiet(context);
        }

        return answer switch
        {
            null => Problems.NoAnswer($"{found}: its program did not answer in {AttachedProjector.Patience.TotalSeconds:0} s; look at its state before you do it again"),
            { Understood: false } => Problems.BadRequest(answer.Problem),
            _ => Results.Text(answer.StateJson, ApiTexts.Json, Encoding.UTF8),
        };
    }

    private static async Task<IResult> AttachAsync(
        int station, string projector, HttpContext context, LiveStations live, AttachedProjectors all, Audit audit, TimeProvider clock, CancellationToken cancellationToken)
    {
        if (live.Find(station) is null)
        {
            return Problems.NotFound($"station: found {station}; allowed: 1 to {live.Count}");
        }

        var (report, answer) = await ReadAsync(station, projector, context, attaching: true, cancellationToken).ConfigureAwait(false);
        if (report is null)
        {
            return answer!;
        }

        var attached = all.Attach(station, projector, report.State);
        audit.Write(AuditLine.Of(context, StatusCodes.Status200OK, $"{attached} can be set up from pages"));
        AuditNote.On(context, $"{attached} has left");
        return new ProjectorStream(attached, all, clock);
    }

    private static async Task<IResult> ReportAsync(int station, string projector, HttpContext context, AttachedProjectors all, CancellationToken cancellationToken)
    {
        if (all.Find(station, projector) is not { } found)
        {
            return NoProjector(station, projector, all);
        }

        var (report, answer) = await ReadAsync(station, projector, context, attaching: false, cancellationToken).ConfigureAwait(false);
        if (report is null)
        {
            return answer!;
        }

        if (report.Attachment != found.Id)
        {
            return Problems.Refused($"$.attachment: found another than that of the {found}: another calibration took its place");
        }

        found.Report(report);
        AuditNote.Quiet(context);
        return TypedResults.Json(Done.It, WebJson.Options);
    }

    private static async Task<(CalibrationReport? Report, IResult? Answer)> ReadAsync(
        int station, string projector, HttpContext context, bool attaching, CancellationToken cancellationToken)
    {
        var body = await RequestBody.ReadAsync(context.Request, MostStateBytes, cancellationToken).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return (null, body.Answer);
        }

        var read = CalibrationReport.Read(bytes, station, projector, attaching);
        return (read.Value, read.Value is null ? Problems.Of(read.Problems) : null);
    }

    private static ProblemHttpResult NoProjector(int station, string projector, AttachedProjectors all)
    {
        var there = all.All.Count > 0 ? string.Join(", ", all.All.Select(one => one.ToString())) : "none yet; start one with: aimtrainer calibrate --host URL";
        return Problems.NotFound($"projector: found {FoundText.Quoted(projector)} of station {station}; allowed: {there}");
    }
}
