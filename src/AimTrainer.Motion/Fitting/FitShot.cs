using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>
/// One shot for a fit. Laydown and launch angle are not asked for: they are found with the lane, from the crossings. Bare doubles
/// whose names carry the unit.
/// </summary>
/// <param name="Hand">The bowler's hand.</param>
/// <param name="Boards">Where it was seen, at three distances or more; the laydown is a crossing at 0 ft.</param>
/// <param name="SpeedMph">Speed, as measured or as usual.</param>
/// <param name="RevsRpm">Rev rate, as measured or as usual.</param>
/// <param name="AxisRotationDegrees">Axis rotation, as measured or as usual.</param>
public sealed record FitShot(Hand Hand, ValueList<MeasuredBoard> Boards, double SpeedMph, double RevsRpm, double AxisRotationDegrees)
{
    /// <summary>Fewest crossings: two make a line, the third tells of the lane.</summary>
    public const int FewestBoards = 3;

    /// <summary>Where the speed was measured; never <see cref="Domain.SpeedPlace.Unknown"/>.</summary>
    public SpeedPlace SpeedPlace { get; init; } = SpeedPlace.Release;

    /// <summary>Axis tilt, 0 to 90.</summary>
    public double AxisTiltDegrees { get; init; }

    /// <summary>Where the ball touches the lane, feet past the foul line, 0 to 10.</summary>
    public double LaydownFeet { get; init; }

    /// <summary>How far the speed may be off, one standard deviation, mph; 0 takes it as exact (a speed on the way: to 0.05).</summary>
    public double SpeedSpreadMph { get; init; }

    /// <summary>How far the revs may be off, one standard deviation, rpm; 0 takes them as exact.</summary>
    public double RevsSpreadRpm { get; init; }

    /// <summary>How far the rotation may be off, one standard deviation, degrees; 0 takes it as exact.</summary>
    public double AxisRotationSpreadDegrees { get; init; }

    /// <summary>What is wrong with this shot and what is allowed, or null when it can be fitted.</summary>
    public string? Problem()
    {
        if (Boards.Count < FewestBoards || Boards.AsEnumerable().DistinctBy(board => board.Feet).Count() < Boards.Count)
        {
            return $"{Boards.Count} crossings; allowed: {FewestBoards} or more, one at each distance";
        }

        foreach (var board in Boards)
        {
            if (!(board.Feet >= 0 && board.Feet <= LaneSurface.EndFeet && board.Board >= Track.NearEdge && board.Board <= Track.FarEdge))
            {
                return string.Create(
                    CultureInfo.InvariantCulture, $"a crossing on board {board.Board} at {board.Feet} ft; allowed: boards 0.5 to 39.5 at 0 to 60 ft");
            }
        }

        if (!(SpeedSpreadMph is >= 0 and <= 10 && RevsSpreadRpm is >= 0 and <= 500 && AxisRotationSpreadDegrees is >= 0 and <= 90))
        {
            return "a spread of speed, revs or rotation that is not a number, below 0 or beyond 10 mph, 500 rpm or 90 degrees";
        }

        if (SpeedPlace == SpeedPlace.Unknown)
        {
            return "a speed whose place is not known; allowed: release, average, pins";
        }

        return new Release(Hand, Board.LaneCentre.Boards, 0, SpeedMph * Release.MetresPerSecondPerMph, RevsRpm)
        {
            AxisRotationDegrees = AxisRotationDegrees,
            AxisTiltDegrees = AxisTiltDegrees,
            LaydownFeet = LaydownFeet,
        }.Problem();
    }
}
