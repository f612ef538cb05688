using AimTrainer.Domain;

namespace AimTrainer.Sessions.Tests;

public class DuplicateShotsTests
{
    [Fact]
    public void Add_SameId_IsTakenOnce()
    {
        var seen = new DuplicateShots();
        Assert.True(seen.Add(Sample.Shot(10, "a", null)));
        Assert.False(seen.Add(Sample.Shot(11, "a", Sample.Start)));
        Assert.True(seen.Add(Sample.Shot(10, "A", null)));
    }

    [Fact]
    public void Add_SameTimeAndValues_IsTakenOnceWhateverTheOffset()
    {
        var seen = new DuplicateShots();
        Assert.True(seen.Add(Sample.Shot(10, null, Sample.Start)));
        Assert.True(seen.Add(Sample.Shot(11, null, Sample.Start)));
        Assert.True(seen.Add(Sample.Shot(12, null, Sample.Start)));
        Assert.False(seen.Add(Sample.Shot(10, null, Sample.Start.ToOffset(TimeSpan.FromHours(2)))));
        Assert.False(seen.Add(Sample.Shot(12, null, Sample.Start)));
        Assert.False(seen.Add(Sample.Shot(11, "later with an id", Sample.Start)));
        Assert.True(seen.Add(Sample.Shot(10, null, Sample.Start.AddSeconds(1))));
    }

    [Fact]
    public void Add_DifferentIds_AreDifferentShots()
    {
        var seen = new DuplicateShots();
        Assert.True(seen.Add(Sample.Shot(10, "a", Sample.Start)));
        Assert.True(seen.Add(Sample.Shot(10, "b", Sample.Start)));
    }

    [Fact]
    public void Add_ManyValuesAtOneTime_EachIsNewOnce()
    {
        var seen = new DuplicateShots();
        var shots = Enumerable.Range(0, 2000).Select(i => Sample.Shot(5 + (i / 100.0), time: Sample.Start)).ToList();

        Assert.All(shots, shot => Assert.True(seen.Add(shot)));
        Assert.All(shots, shot => Assert.False(seen.Add(shot)));
    }

    [Fact]
    public void Add_SameTimeAndValues_OnlyDifferentIdsAreDifferentShots()
    {
        var seen = new DuplicateShots();

        Assert.True(seen.Add(Sample.Shot(9, "other", Sample.Start)));
        Assert.True(seen.Add(Sample.Shot(10, "a", Sample.Start)));
        Assert.True(seen.Add(Sample.Shot(10, "b", Sample.Start)));
        Assert.False(seen.Add(Sample.Shot(10, null, Sample.Start)));
        Assert.False(seen.Add(Sample.Shot(10, "b", Sample.Start)));
        Assert.False(seen.Add(Sample.Shot(10, null, Sample.Start) with { Source = ShotSource.File }));
        Assert.True(seen.Add(Sample.Shot(10, "c", Sample.Start.AddTicks(1))));
    }

    [Fact]
    public void Add_TimesInAnyOrder_EachIsNewOnce()
    {
        var seen = new DuplicateShots();
        int[] minutes = [5, 1, 9, 3, 9, 7, 20, 0];
        var shots = minutes.Select((minute, i) => Sample.Shot(5 + i, time: Sample.Start.AddMinutes(minute))).ToList();

        Assert.All(shots, shot => Assert.True(seen.Add(shot)));
        Assert.All(shots, shot => Assert.False(seen.Add(shot)));
        Assert.True(seen.Add(Sample.Shot(30, time: Sample.Start.AddMinutes(9))));
    }

    [Fact]
    public void Add_NeitherIdNorTime_IsNeverTakenForAnother()
    {
        var seen = new DuplicateShots();

        Assert.True(seen.Add(Sample.Shot(10)));
        Assert.True(seen.Add(Sample.Shot(10)));
    }
}
