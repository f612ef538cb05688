using AimTrainer.Domain;
using AimTrainer.Motion;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>A wish for a straight line: by its targets, or by laydown and angle.</summary>
/// <param name="Hand">The bowler's hand.</param>
/// <param name="Targets">Both targets; null when laydown and angle are given.</param>
/// <param name="Laydown">Board at the foul line.</param>
/// <param name="Angle">Positive outward.</param>
/// <param name="Downlane">Where the farther target of a line by laydown and angle lies.</param>
/// <param name="SlideDistance">The bowler's own; the usual one when null.</param>
/// <param name="Exit">Where the ball should leave the oil; null when the pattern is not given.</param>
/// <param name="Walk">What a walk across the lane keeps; null when none is asked for.</param>
internal sealed record PlanLine(
    Hand Hand, ValueList<Crossing>? Targets, Board Laydown, Degrees Angle, Feet Downlane, BoardOffset? SlideDistance, Crossing? Exit, WalkKeeps? Walk)
{
    private const int FirstWalkArrow = 2, LastWalkArrow = 4, LongestLine = 80;

    public static PlanLine? Read(JsonFile file, ObjectReader body)
    {
        var hand = body.Choice<Hand>("hand");
        var (targets, laydown, angle, downlane) = (default(ValueList<Crossing>), default(Board), default(Degrees), Feet.FromFeet(40));
        if (body.ExactlyOne("line", "laydownBoard") == "line")
        {
            targets = Line(body);
        }
        else
        {
            laydown = body.Number("laydownBoard", Board.NearEdge.Boards, Board.FarEdge.Boards) is { } board ? Board.FromBoards(board) : default;
            angle = body.Number("launchAngleDeg", -Release.WidestLaunchDegrees, Release.WidestLaunchDegrees) is { } degrees ? Degrees.FromDegrees(degrees) : default;
            downlane = body.OptionalNumber("downlaneFeet", 20, 59) is { } feet ? Feet.FromMeasurement(feet) : downlane;
        }

        BoardOffset? slide = body.OptionalNumber("slideDistanceBoards", 0, 20) is { } boards ? BoardOffset.FromBoards(boards) : null;
        Crossing? exit = body.OptionalNumber("patternFeet", PlanReader.ShortestPattern, PlanReader.LongestPattern) is { } length
            ? LineArithmetic.ExitOfPattern(Feet.FromMeasurement(length)) : null;
        var walk = body.OptionalChoice<WalkKeeps>("walk");
        body.Done();
        return file.HasProblems || hand is not { } side ? null : new PlanLine(side, targets, laydown, angle, downlane, slide, exit, walk);
    }

    public IResult Answer()
    {
        var lane = LaneProfileReader.Default;
        try
        {
            var plan = Targets is { } two ? LinePlan.Through(two[0], two[1], Hand, lane, SlideDistance) : LinePlan.Leaving(Laydown, Angle, Downlane, Hand, lane, SlideDistance);
            if (Walk == WalkKeeps.Breakpoint && plan.Far.Distance <= lane.ArrowsDistance)
            {
                return Problems.BadRequest($"$.walk: found a farther target at {plan.Far.Distance} ft; allowed: beyond the arrows at {lane.ArrowsDistance} ft");
            }

            return TypedResults.Json(
                LineAnswer.Of(plan, Exit, LineMoves.Usual, Walk is { } keeps ? LineWalk.Arrows(plan, FirstWalkArrow, LastWalkArrow, keeps) : null), WebJson.Options);
        }
        catch (ArgumentException)
        {
            return Problems.BadRequest("$.line: found a line that runs too far across the lane, or a move of it does; allowed: targets that lie farther apart downlane");
        }
    }

    private static ValueList<Crossing>? Line(ObjectReader body)
    {
        if (body.Text("line", LongestLine) is not { } text)
        {
            return null;
        }

        var targets = LineNotation.Parse(text, out var problem);
        if (problem?.Split("; allowed: ") is [var found, var allowed])
        {
            body.Report("line", found["found ".Length..], allowed);
        }
        else if (targets is { Count: > 2 })
        {
            body.Report("line", $"{targets.Count} targets", "two");
        }

        return targets is { Count: 2 } ? targets : null;
    }
}
