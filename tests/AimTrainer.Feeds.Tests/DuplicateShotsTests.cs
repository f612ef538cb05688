using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Feeds.Tests;

public class DuplicateShotsTests
{
    private static readonly DateTimeOffset Noon = new(2026, 3, 1, 12, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Add_SameId_IsTakenOnce()
    {
        var seen = new DuplicateShots();
        Assert.True(seen.Add(Made("a", null, 10)));
        Assert.False(seen.Add(Made("a", Noon, 11)));
        Assert.True(seen.Add(Made("A", null, 10)));
    }

    [Fact]
    public void Add_SameTimeAndValues_IsTakenOnceWhateverTheOffset()
    {
        var seen = new DuplicateShots();
        Assert.True(seen.Add(Made(null, Noon, 10)));
        Assert.True(seen.Add(Made(null, Noon, 11)));
        Assert.True(seen.Add(Made(null, Noon, 12)));
        Assert.False(seen.Add(Made(null, Noon.ToOffset(TimeSpan.FromHours(2)), 10)));
        Assert.False(seen.Add(Made(null, Noon, 12)));
        Assert.False(seen.Add(Made("later with an id", Noon, 11)));
        Assert.True(seen.Add(Made(null, Noon.AddSeconds(1), 10)));
    }

    [Fact]
    public void Add_DifferentIds_AreDifferentShots()
    {
        var seen = new DuplicateShots();
        Assert.True(seen.Add(Made("a", Noon, 10)));
        Assert.True(seen.Add(Made("b", Noon, 10)));
    }

    [Fact]
    public void Add_NeitherIdNorTime_IsNeverADuplicate()
    {
        var seen = new DuplicateShots();
        Assert.True(seen.Add(Made(null, null, 10)));
        Assert.True(seen.Add(Made(null, null, 10)));
    }

    private static Shot Made(string? id, DateTimeOffset? time, double board)
    {
        var reading = new ShotReading { Id = id, Time = time };
        reading.AddCrossing(15, board);
        return reading.Check(out _)!;
    }
}
