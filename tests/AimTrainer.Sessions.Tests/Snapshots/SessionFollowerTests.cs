using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Sessions.Tests;

public class SessionFollowerTests
{
    [Fact]
    public async Task Take_EveryStepOfAStation_HasTheStationsPictureEachTime()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(6));
        var follower = SessionFollower.Open(running.Store.Session()).Follower!;
        for (var i = 0; i < 6; i++)
        {
            await running.ThrowAsync(8 + i, $"shot-{i}");
            foreach (var entry in running.Store.Log().Where(entry => entry.Sequence > follower.Sequence))
            {
                Assert.Null(follower.Take(entry));
            }

            Assert.Equal(Json(running.Station.Snapshot), Json(follower.Snapshot));
        }

        Assert.Equal(SessionPhase.Ended, follower.Snapshot.Phase);
    }

    [Fact]
    public async Task Take_AStepTooFar_IsNotTakenAndSaysWhichIsMissing()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(6));
        await running.ThrowAsync(10);
        var follower = SessionFollower.Open(running.Store.Session()).Follower!;

        Assert.Equal("step 1 of its log is missing", follower.Take(running.Store.Log()[1]));
        Assert.Equal(0, follower.Sequence);
    }

    [Fact]
    public async Task Open_DrillThatIsNotRead_SaysWhy()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(6));

        var (follower, problem) = SessionFollower.Open(running.Store.Session() with { DrillJson = "{" });

        Assert.Null(follower);
        Assert.StartsWith("this version does not read its drill (", problem, StringComparison.Ordinal);
    }

    private static string Json<T>(T value) => JsonSerializer.Serialize(value, DomainJson.Options);
}
