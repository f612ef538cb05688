using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>A ball that runs straight and never hooks.</summary>
public sealed class StraightPath : ISimulatedPath
{
    /// <inheritdoc/>
    public double BoardAt(Release release, Feet distance, LaneProfile lane) =>
        release.LaydownBoard - BoardsOver(distance.Value, release.LaunchAngleDegrees, lane);

    /// <summary>How many boards a direction goes outward over a distance.</summary>
    /// <param name="feet">The distance.</param>
    /// <param name="degrees">Positive outward.</param>
    /// <param name="lane">The lane.</param>
    public static double BoardsOver(double feet, double degrees, LaneProfile lane) =>
        Math.Tan(degrees * Math.PI / 180) * feet * 12 * LaneProfile.BoardCount / lane.Width.Value;
}
