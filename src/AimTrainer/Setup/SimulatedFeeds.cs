using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Motion;

namespace AimTrainer.Setup;

/// <summary>The invented bowler for a live session.</summary>
internal static class SimulatedFeeds
{
    // Made up, for a bowler who scatters about 0.9 boards at the arrows (sqrt(0.63² + (0.21° * 2.95)² + 0.1²), where a degree is
    // tan(1°) * feet * 12 * 39 / 41.5 boards; 0.87 counted over 4000 throws) and about 1.4 at 40 ft on a line of 15 to 7 (counted): the ball
    // hooks over an invented house pattern, which takes some of the scatter out.
    private const double LaydownSpreadBoards = 0.63;
    private const double AngleSpreadDegrees = 0.21;

    /// <summary>Throws at whatever the station shows, until the session is over.</summary>
    public static SimulatedShotFeed For(LiveSession live, TimeSpan pace)
    {
        var setup = live.Station.Snapshot.Setup!;
        var settings = new SimulatedBowlerSettings
        {
            Seed = setup.Seed,
            Hand = setup.Hand,
            Name = setup.Bowler,
            LaydownSpreadBoards = LaydownSpreadBoards,
            AngleSpreadDegrees = AngleSpreadDegrees,
        };
        return new SimulatedShotFeed(
            settings,
            setup.Lane,
            _ => ValueTask.FromResult(live.Station.Snapshot.Phase == SessionPhase.Throwing ? live.Station.Snapshot.Shown : null),
            pace,
            live.Clock,
            live.Station.Snapshot.NextNumber,
            new HookingPath(InventedLane.House(), Ball.Usual));
    }
}
