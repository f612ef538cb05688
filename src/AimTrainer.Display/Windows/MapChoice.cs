using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>The map that a projector is to be used with, or why there is none.</summary>
/// <param name="Map">The map; null when there is none that can be trusted.</param>
/// <param name="Why">Why there is none, for the bowler's end of the lane; null when there is one, or none was ever made.</param>
public sealed record MapChoice(ProjectorMap? Map, string? Why)
{
    /// <summary>The width of the lane that the map was made on; null for a map that is only looked at, which holds for any.</summary>
    public Inches? LaneWidth { get; init; }

    /// <summary>
    /// The choice for a session's lane. A map made for another width would draw every target beside the place that is graded, so there is
    /// none then.
    /// </summary>
    public MapChoice For(LaneProfile lane) => Map is null || LaneWidth is not { } width || width == lane.Width
        ? this
        : new MapChoice(null, FormattableString.Invariant(
            $"The map of this projector is for a lane of {width.Value:0.###} in; the session's lane has {lane.Width.Value:0.###} in. Calibrate with this lane."));
}
