using AimTrainer.Domain;
using AimTrainer.Motion;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>A wish for a drill made of a line.</summary>
/// <param name="Practise">What is to be practised; null for the line itself.</param>
/// <param name="Line">The line.</param>
internal sealed record PlanDrill(ScatterPart? Practise, AimedLine Line)
{
    public static PlanDrill? Read(JsonFile file, ObjectReader body)
    {
        var practise = body.OptionalChoice<ScatterPart>("practise");
        var arrows = Target(body, "arrowsBoard", "arrowsFeet", 12, 16);
        var downlane = Target(body, "downlaneBoard", "downlaneFeet", 20, 59);
        var (speed, revs) = (body.OptionalNumber("speedMph", 4.5, 35.5), body.OptionalNumber("revsRpm", 0, Release.MostRpm));
        var angle = body.OptionalNumber("launchAngleDeg", -Release.WidestLaunchDegrees, Release.WidestLaunchDegrees);
        var laydown = body.OptionalNumber("laydownBoard", Board.NearEdge.Boards, Board.FarEdge.Boards);
        body.Done();
        return file.HasProblems || arrows is not { } near || downlane is not { } far ? null : new PlanDrill(practise, new AimedLine(near, far, new Baseline
        {
            Speed = speed is { } mph ? new BallSpeed(MilesPerHour.FromMilesPerHour(mph), SpeedPlace.Release) : null,
            Revs = revs is { } rpm ? Rpm.FromRpm(rpm) : null,
            LaunchAngle = angle is { } degrees ? Degrees.FromDegrees(degrees) : null,
            Laydown = laydown is { } board ? Board.FromMeasurement(board) : null,
        }));
    }

    public IResult Keep(HttpContext context, DrillShelf shelf)
    {
        var shippedId = PractiseDrill.IdFor(Practise);
        if (shelf.FileOf(shippedId) is not { } file || DrillShelf.Read(file, File.ReadAllBytes(file)).Value is not { } shipped)
        {
            return Problems.NotFound($"drill: found no {shippedId} without mistakes on the shelf; allowed: the one that came with the program");
        }

        var read = AimedDrill.Of(shipped, AimedDrill.IdFor(shippedId, Line), "drill", Line);
        if (read.Value is not { } drill)
        {
            return Problems.Of(read.Problems);
        }

        try
        {
            shelf.Save(drill);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return Problems.NotKept($"the drill could not be written: {exception.Message}");
        }

        AuditNote.On(context, $"own drill {drill.Script.Id} made of a line");
        return TypedResults.Json(DrillSummary.Of(drill.Script), WebJson.Options);
    }

    private static Crossing? Target(ObjectReader body, string board, string feet, double nearest, double farthest)
    {
        var (across, down) = (body.Number(board, Board.NearEdge.Boards, Board.FarEdge.Boards), body.Number(feet, nearest, farthest));
        return across is { } boards && down is { } distance ? new Crossing(Feet.FromMeasurement(distance), Board.FromMeasurement(boards)) : null;
    }
}
