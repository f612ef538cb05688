using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>Where an invented ball runs after it left the hand.</summary>
public interface ISimulatedPath
{
    /// <summary>The bowler's board at a distance, as far out as the path goes: gutters are not its matter.</summary>
    /// <param name="release">How the ball left the hand.</param>
    /// <param name="distance">Feet past the foul line, 0 to 60.</param>
    /// <param name="lane">The lane.</param>
    double BoardAt(Release release, Feet distance, LaneProfile lane);
}
