using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Something of a release that may differ between throws.</summary>
/// <param name="Name">As a shot file calls it.</param>
/// <param name="Words">In words.</param>
/// <param name="Grain">Half a step of usual readings: less is no deviation.</param>
/// <param name="Gross">Less is no gross miss, however alike the other throws are.</param>
/// <param name="Of">How it is read off a shot; null where it was not measured.</param>
internal sealed record Covariate(string Name, string Words, double Grain, double Gross, Func<Shot, double?> Of)
{
    /// <summary>How many of a hundred throws may lack it and are left out for it; when more do, it is not adjusted for.</summary>
    public const int MostMissingPercent = 10;

    /// <summary>All that is adjusted for, the first to be given up last.</summary>
    /// <remarks>
    /// A launch angle that is worked out from a crossing has the ball's own early hook in it, as a speed at the pins has its friction: to
    /// adjust for what the ball does would take away a part of the difference (docs/comparison.md has it measured).
    /// </remarks>
    /// <param name="place">Where speed is measured.</param>
    public static IReadOnlyList<Covariate> All(SpeedPlace? place) =>
    [
        new("launchAngleDeg", "launch angle", 0.05, 1, shot => shot.LaunchAngle?.Value),
        new("laydownBoard", "laydown", 0.05, 2, shot => shot.Laydown?.Boards),
        new("speedMph", "speed", 0.05, 1, shot => shot.Speed is { } speed && speed.Place == place ? speed.Value.Value : null),
        new("revsRpm", "revs", 1, 50, shot => shot.Revs?.Value),
    ];

    /// <summary>Where most speeds are measured, that at the pins aside; null when there is none.</summary>
    public static SpeedPlace? UsualPlace(IEnumerable<Shot> shots) => shots
        .Where(shot => shot.Speed is { Place: not SpeedPlace.Pins })
        .GroupBy(shot => shot.Speed!.Value.Place)
        .OrderByDescending(same => same.Count()).ThenBy(same => same.Key)
        .Select(same => (SpeedPlace?)same.Key)
        .FirstOrDefault();
}
