using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>The straight line of a shot, or why there is none.</summary>
/// <param name="Line">The line; null when it is not known.</param>
/// <param name="Why">What was not measured, or what speaks against a straight line; null when there is a line.</param>
/// <param name="Sort">The same in few words, the same for all shots that lack the same; null when there is a line.</param>
public sealed record StraightFit(StraightLine? Line, string? Why, string? Sort)
{
    /// <summary>By how much, in boards, three or more readings may leave the line between the outermost before it is no line.</summary>
    public const double MostBendBoards = 0.5;

    // Beside the fixed limit: noise alone takes a middle reading this many standard deviations off the line once in some ten thousand shots.
    private const double MostBendOfNoise = 4 * 1.2247448713915890;

    /// <summary>Finds the straight line of a shot: by least squares through laydown and crossings up to the lane's straight distance.</summary>
    /// <remarks>
    /// A place beyond the straight distance is never used: there the ball hooks, and its curve would be read as angle. Readings must lie at
    /// least <see cref="LaunchAngles.ShortestBaseFeet"/> apart. Two readings cannot show a bend; of three or more it is looked for.
    /// </remarks>
    /// <param name="shot">The shot.</param>
    /// <param name="lane">How far the ball is taken to run straight.</param>
    /// <param name="noiseBoards">Standard deviation of a reading's error when it is known.</param>
    public static StraightFit Of(Shot shot, LaneProfile lane, double? noiseBoards = null)
    {
        var readings = Readings(shot, lane);
        if (readings.Count == 0)
        {
            return No(string.Create(CultureInfo.InvariantCulture, $"no laydown and no crossing up to {lane.StraightDistance} ft"), "nothing measured in the straight part");
        }

        if (readings[^1].Distance.Value - readings[0].Distance.Value < LaunchAngles.ShortestBaseFeet)
        {
            return shot.LaunchAngle is { } reported
                ? Reported(readings, reported, lane)
                : No(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"only board {readings[0].Board} at {readings[0].Distance} ft is known; needed is a second place at least {LaunchAngles.ShortestBaseFeet} ft from it, ")
                        + string.Create(CultureInfo.InvariantCulture, $"up to {lane.StraightDistance} ft, or the launch angle"),
                    "one place in the straight part and no launch angle");
        }

        var bend = Bend(readings);
        var most = Math.Max(MostBendBoards, MostBendOfNoise * (noiseBoards ?? 0));
        if (bend > most)
        {
            return No(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"the ball bends by {bend:0.00} boards before {lane.StraightDistance} ft, so it is not straight there; ")
                    + "set straightFeet of the lane profile nearer (docs/lanes.md)",
                "not straight in the straight part");
        }

        var (laydown, slope) = LeastSquares(readings);
        var from = shot.Laydown is null ? StraightSource.Crossings : StraightSource.LaydownAndCrossings;
        return new StraightFit(new StraightLine(laydown, slope, StraightLine.DegreesOf(slope, lane), from, readings.ToValueList()), null, null);
    }

    private static StraightFit No(string why, string sort) => new(null, why, sort);

    private static StraightFit Reported(List<Crossing> readings, Degrees angle, LaneProfile lane)
    {
        var slope = StraightLine.SlopeOf(angle.Value, lane);
        var place = readings[0];
        var line = new StraightLine(
            place.Board.Boards - (slope * place.Distance.Value), slope, angle.Value, StraightSource.PlaceAndReportedAngle, [place]);
        return new StraightFit(line, null, null);
    }

    private static List<Crossing> Readings(Shot shot, LaneProfile lane)
    {
        var readings = new List<Crossing>();
        if (shot.Laydown is { } laydown)
        {
            readings.Add(new Crossing(default, laydown));
        }

        foreach (var crossing in shot.Crossings)
        {
            if (crossing.Distance <= lane.StraightDistance && (crossing.Distance > default(Feet) || readings.Count == 0))
            {
                readings.Add(crossing);
            }
        }

        return readings;
    }

    private static double Bend(List<Crossing> readings)
    {
        var (first, last) = (readings[0], readings[^1]);
        var slope = (last.Board - first.Board).Boards / (last.Distance.Value - first.Distance.Value);
        var most = 0.0;
        foreach (var reading in readings)
        {
            most = Math.Max(most, Math.Abs((reading.Board - first.Board).Boards - (slope * (reading.Distance.Value - first.Distance.Value))));
        }

        return most;
    }

    private static (double Laydown, double Slope) LeastSquares(List<Crossing> readings)
    {
        var (meanFeet, meanBoard) = (0.0, 0.0);
        foreach (var reading in readings)
        {
            meanFeet += reading.Distance.Value / readings.Count;
            meanBoard += reading.Board.Boards / readings.Count;
        }

        var (along, product) = (0.0, 0.0);
        foreach (var reading in readings)
        {
            var feet = reading.Distance.Value - meanFeet;
            along += feet * feet;
            product += feet * (reading.Board.Boards - meanBoard);
        }

        var slope = product / along;
        return (meanBoard - (slope * meanFeet), slope);
    }
}
