using AimTrainer.Sessions;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public abstract class ProgressContract(TestRecord record) : IDisposable
{
    private readonly TestRecord _record = record;

    [Fact]
    public async Task NewestOfStation_GrowingSession_TellsItsLastStepAndItsEnd()
    {
        await KeepAsync(_record.Store, Setup("old"), Shot(10));
        await KeepAsync(_record.Store, Setup("elsewhere") with { Station = 8, At = Start.AddDays(2) });
        await _record.Store.CreateAsync(Setup("new") with { At = Start.AddDays(1) }, Drill(), Cancel);
        Assert.Equal(new SessionProgress("new", false, 0), await _record.Store.NewestOfStationAsync(7, Cancel));

        await _record.Store.AppendAsync("new", Began(), Cancel);
        await _record.Store.AppendAsync("new", Thrown(2, Graded(1, Shot(10))), Cancel);
        Assert.Equal(new SessionProgress("new", false, 2), await _record.Store.NewestOfStationAsync(7, Cancel));

        await _record.Store.AppendAsync("new", Ended(3), Cancel);
        Assert.Equal(new SessionProgress("new", true, 3), await _record.Store.NewestOfStationAsync(7, Cancel));
        Assert.Null(await _record.Store.NewestOfStationAsync(9, Cancel));
    }

    [Fact]
    public async Task ProgressOf_SomeSessions_TellsHowFarEachIs()
    {
        await KeepAsync(_record.Store, Setup("one"), Shot(10));
        await KeepAsync(_record.Store, Setup("other"), Shot(10), Shot(11));
        await _record.Store.CreateAsync(Setup("new"), Drill(), Cancel);
        string[] ids = ["other", "new", "never made"];

        var found = await _record.Store.AskAsync(record => record.ProgressOfAsync(ids, Cancel), Cancel);

        Assert.Equal([new SessionProgress("new", false, 0), new SessionProgress("other", false, 3)], found.OrderBy(progress => progress.SessionId, StringComparer.Ordinal));
    }

    [Fact]
    public async Task ReadLog_AfterAStep_GivesTheLaterOnes()
    {
        await KeepAsync(_record.Store, Setup(), Shot(10), Shot(11), Shot(12));
        var later = new List<long>();
        await foreach (var entry in _record.Store.ReadLogAsync("s1", 2, Cancel))
        {
            later.Add(entry.Sequence);
        }

        Assert.Equal([3L, 4L], later);
    }

    public void Dispose()
    {
        _record.Dispose();
        GC.SuppressFinalize(this);
    }
}
