using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Says where a miss came from as a coach would.</summary>
/// <param name="lane">Where the arrows are and how far the ball is taken to run straight.</param>
/// <param name="hand">The bowler's hand: it matters for left and right only.</param>
/// <param name="sides">How sides are called.</param>
public sealed class MissWords(LaneProfile lane, Hand hand, SideNames sides = SideNames.InsideOutside)
{
    /// <summary>A part smaller than this, in boards at the target, is not worth a word.</summary>
    public const double WorthAWordBoards = 0.5;

    /// <summary>"2.1 boards inside downlane: laid down on the mark, angle 0.6 degrees too closed; ball held its line".</summary>
    /// <param name="shot">The shot.</param>
    /// <param name="index">Which of its targets.</param>
    /// <param name="kind">What its parts are held against; not used when it could not be split.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such target.</exception>
    public string Of(ShotSplit shot, int index, PlanKind kind)
    {
        var target = shot.Targets[index];
        if (target.MissBoards is not { } miss)
        {
            return $"{Place(shot, index)}: {MissSplitter.NotMeasured}";
        }

        var start = $"{(Short(miss) == "0" ? "on the mark" : Off(miss))} {Place(shot, index)}";
        if (target is not { LaydownBoards: { } laydown, AngleBoards: { } angle, BeyondBoards: { } beyond } || shot.AngleOffDegrees is not { } degrees)
        {
            return shot.Line is { } line && shot.AngleOffDegrees is null
                ? $"{start}: laid down on board {Signed(line.LaydownBoard)}, {Direction(line.LaunchAngleDegrees)}; what was meant is not known, so it cannot be split"
                : $"{start}: not split, {target.Why}";
        }

        var from = Small(laydown) ? "laid down on the mark" : $"laid down {Off(laydown)}";
        var direction = Small(angle) ? kind == PlanKind.UsualAngle ? "angle as usual" : "angle as planned" : $"angle {Turned(degrees)}";
        return $"{start}: {from}, {direction}{Movement(target, beyond, kind)}";
    }

    private static bool Small(double boards) => Math.Abs(boards) < WorthAWordBoards;

    private static string Short(double value) => Math.Abs(value).ToString("0.#", CultureInfo.InvariantCulture);

    private static string Boards(double value) => Short(value) is var size && size == "1" ? "1 board" : $"{size} boards";

    private static string Signed(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private string Direction(double degrees)
    {
        var size = Math.Abs(degrees).ToString("0.0", CultureInfo.InvariantCulture);
        return size == "0.0" ? "straight down" : $"{size} degrees {(sides == SideNames.LeftRight ? $"to the {Side(degrees < 0)}" : degrees > 0 ? "outward" : "inward")}";
    }

    private string Off(double boards) => $"{Boards(boards)} {Side(boards > 0)}";

    private string Side(bool inside) => sides == SideNames.InsideOutside
        ? inside ? "inside" : "outside"
        : inside == (hand == Hand.Right) ? "left" : "right";

    private string Turned(double degrees)
    {
        var size = Math.Abs(degrees).ToString("0.0", CultureInfo.InvariantCulture);
        size = size == "0.0" ? "under 0.1 degrees" : size == "1.0" ? "1 degree" : $"{size} degrees";
        return sides == SideNames.InsideOutside
            ? $"{size} too {(degrees > 0 ? "open" : "closed")}"
            : $"{size} too far {Side(degrees < 0)}";
    }

    private string Movement(TargetSplit target, double beyond, PlanKind kind)
    {
        if (target.Distance <= lane.StraightDistance)
        {
            return Small(beyond) ? "" : $"; {Off(beyond)} that the straight line does not tell (a misread?)";
        }

        if (Small(beyond))
        {
            return kind == PlanKind.UsualMovement || Math.Abs(target.BentBoards ?? 0) >= WorthAWordBoards ? "; ball moved as usual" : "; ball held its line";
        }

        return $"; ball read {(beyond > 0 ? "early" : "late")} by {Boards(beyond)}";
    }

    private string Place(ShotSplit shot, int index)
    {
        var distance = shot.Targets[index].Distance;
        if (distance.ApartFrom(lane.ArrowsDistance) <= Crossings.MeasuredWithinFeet)
        {
            return "at the arrows";
        }

        var onlyOne = shot.Targets.AsEnumerable().Count(target => target.Distance > lane.StraightDistance) == 1;
        return distance > lane.StraightDistance && onlyOne ? "downlane" : $"at {distance} ft";
    }
}
