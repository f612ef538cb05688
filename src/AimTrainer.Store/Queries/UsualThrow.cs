using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>
/// A bowler's usual throw: the median of each value, told only when at least <see cref="BowlerQueries.FewestMeasured"/> were
/// measured. Medians, because one slip of the hand should not move what is usual.
/// </summary>
internal static class UsualThrow
{
    public static Baseline BaselineOf(IReadOnlyList<GradedShotRow> shots) => new()
    {
        Speed = SpeedOf(shots),
        Revs = Median(shots.Select(shot => shot.RevsRpm)) is { } rpm ? Rpm.FromMeasurement(rpm) : null,
        LaunchAngle = Median(shots.Select(shot => shot.LaunchAngleDegrees)) is { } degrees ? Degrees.FromMeasurement(degrees) : null,
        Laydown = Median(shots.Select(shot => shot.LaydownBoard)) is { } board ? Board.FromMeasurement(board) : null,
    };

    public static Breakpoint? BreakpointOf(IReadOnlyList<GradedShotRow> shots)
    {
        var both = shots.Where(shot => shot.BreakpointBoard is not null && shot.BreakpointFeet is not null).ToList();
        return Median(both.Select(shot => shot.BreakpointBoard)) is { } board && Median(both.Select(shot => shot.BreakpointFeet)) is { } feet
            ? new Breakpoint(Board.FromMeasurement(board), Feet.FromMeasurement(feet))
            : null;
    }

    /// <summary>The speed at the place where it was measured most; of two equally frequent the one nearer to the hand.</summary>
    private static BallSpeed? SpeedOf(IReadOnlyList<GradedShotRow> shots)
    {
        var most = shots.Where(shot => shot.SpeedMph is not null && shot.SpeedAt is not null).GroupBy(shot => shot.SpeedAt!.Value)
            .OrderByDescending(place => place.Count()).ThenBy(place => place.Key).FirstOrDefault();
        return most is not null && Median(most.Select(shot => shot.SpeedMph)) is { } mph
            ? new BallSpeed(MilesPerHour.FromMeasurement(mph), most.Key)
            : null;
    }

    private static double? Median(IEnumerable<double?> values)
    {
        var measured = values.OfType<double>().Order().ToList();
        if (measured.Count < BowlerQueries.FewestMeasured)
        {
            return null;
        }

        var middle = measured.Count / 2;
        return measured.Count % 2 == 1 ? measured[middle] : (measured[middle - 1] + measured[middle]) / 2;
    }
}
