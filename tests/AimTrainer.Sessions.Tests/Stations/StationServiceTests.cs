using AimTrainer.Domain;
using Microsoft.Extensions.Time.Testing;

namespace AimTrainer.Sessions.Tests;

public class StationServiceTests
{
    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Clock_MinutesAreOver_BlockEndsWithoutAShot()
    {
        var clock = new FakeTimeProvider(Sample.Start);
        var station = new Station(1, new MemoryStore(), clock);
        using var service = new StationService([station], clock);
        await service.StartAsync(Cancelled);
        await station.StartAsync(Sample.Setup(), Sample.Drill(""" "until": { "minutes": 2 } """), Cancelled);
        await station.FollowAsync(new SessionInput.Begin(clock.GetUtcNow()), Cancelled);
        var over = FirstAsync(station, snapshot => snapshot.Phase == SessionPhase.Ended);

        clock.Advance(TimeSpan.FromSeconds(119));
        Assert.Equal(new StationReply.Kept(null), await station.FollowAsync(new SessionInput.ClockTick(clock.GetUtcNow()), Cancelled));
        Assert.Equal(SessionPhase.Throwing, station.Snapshot.Phase);
        clock.Advance(TimeSpan.FromSeconds(1));

        await over;
        await service.StopAsync(Cancelled);
    }

    [Fact]
    public async Task SixtyFourStations_AllAtOnce_KeepEveryShotOfTheirOwn()
    {
        const int Lanes = 64, Shots = 20;
        var clock = new FakeTimeProvider(Sample.Start);
        var store = new MemoryStore();
        Station[] stations = [.. Enumerable.Range(1, Lanes).Select(number => new Station(number, store, clock))];
        using var service = new StationService(stations, clock);
        await service.StartAsync(Cancelled);

        await Task.WhenAll(stations.Select(station => Task.Run(
            async () =>
            {
                await station.StartAsync(Sample.Setup($"session-{station.Number}", station.Number), Sample.Shots(Shots), Cancelled);
                await station.FollowAsync(new SessionInput.Begin(Sample.Start), Cancelled);
                for (var i = 0; i < Shots; i++)
                {
                    await station.ThrowAsync(Sample.Shot(10, $"{station.Number}-{i}"), Cancelled);
                }
            },
            Cancelled)));

        Assert.All(stations, station =>
        {
            Assert.Equal(SessionPhase.Ended, station.Snapshot.Phase);
            var ids = store.Log($"session-{station.Number}").Select(entry => entry.Input).OfType<SessionInput.ShotThrown>().Select(thrown => thrown.Shot.Id);
            Assert.Equal(Enumerable.Range(0, Shots).Select(i => $"{station.Number}-{i}"), ids);
        });
        await service.StopAsync(Cancelled);
    }

    private static async Task FirstAsync(Station station, Func<SessionSnapshot, bool> isIt)
    {
        await foreach (var snapshot in station.WatchAsync(Cancelled))
        {
            if (isIt(snapshot))
            {
                return;
            }
        }
    }
}
