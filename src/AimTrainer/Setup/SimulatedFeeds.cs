using AimTrainer.Domain;
using AimTrainer.Feeds;

namespace AimTrainer.Setup;

/// <summary>The invented bowler for a live session.</summary>
internal static class SimulatedFeeds
{
    // Made up, for a bowler who scatters about 0.9 boards at the arrows and 1.8 at 40 ft (straight path): sqrt(0.63² + (0.21° * 2.95)² + 0.1²)
    // and sqrt(0.63² + (0.21° * 7.87)² + 0.1²), where a degree is tan(1°) * feet * 12 * 39 / 41.5 boards.
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
            live.Station.Snapshot.NextNumber);
    }
}
