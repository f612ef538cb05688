using AimTrainer.Domain;
using AimTrainer.Feeds;

namespace AimTrainer.Setup;

/// <summary>The invented bowler for a live session.</summary>
internal static class SimulatedFeeds
{
    /// <summary>Throws at whatever the station shows, until the session is over.</summary>
    public static SimulatedShotFeed For(LiveSession live, TimeSpan pace)
    {
        var setup = live.Station.Snapshot.Setup!;
        var settings = new SimulatedBowlerSettings { Seed = setup.Seed, Hand = setup.Hand, Name = setup.Bowler };
        return new SimulatedShotFeed(
            settings,
            setup.Lane,
            _ => ValueTask.FromResult(live.Station.Snapshot.Phase == SessionPhase.Throwing ? live.Station.Snapshot.Shown : null),
            pace,
            live.Clock,
            live.Station.Snapshot.NextNumber);
    }
}
