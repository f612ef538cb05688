using AimTrainer.Domain;
using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public abstract class RoundTripContract(TestRecord record) : IDisposable
{
    private readonly TestRecord _record = record;

    [Fact]
    public async Task FindAsync_AfterReopening_GivesTheSameSetupAndDrill()
    {
        var setup = Setup();
        await _record.Store.CreateAsync(setup, Drill(), Cancel);
        _record.Reopen();
        var found = await _record.Store.FindAsync("s1", Cancel);
        Assert.NotNull(found);
        Assert.Equal(Json(setup), Json(found.Setup));
        Assert.Equal(setup, found.Setup);
        Assert.Equal(Drill().Json, found.DrillJson);
        Assert.False(found.Ended);
    }

    [Fact]
    public async Task FindAsync_UnknownSession_IsNull()
    {
        Assert.Null(await _record.Store.FindAsync("nobody", Cancel));
        Assert.Empty(await LogAsync(_record.Store, "nobody"));
    }

    [Fact]
    public async Task ReadLogAsync_AfterReopening_GivesTheSameBytes()
    {
        var graded = Graded(1, Shot());
        LogEntry[] entries =
        [
            Began(), Thrown(2, graded), Noted(3),
            new(4, new SessionInput.VoidShot(Start, 1, "foul"), [new SessionEvent.ShotVoided(1, "foul")]),
            new(5, new SessionInput.ClockTick(Start.AddTicks(1)), [new SessionEvent.SessionPaused()]),
            Ended(6),
        ];
        await _record.Store.CreateAsync(Setup(), Drill(), Cancel);
        foreach (var entry in entries)
        {
            await _record.Store.AppendAsync("s1", entry, Cancel);
        }

        _record.Reopen();
        var read = await LogAsync(_record.Store, "s1");
        Assert.Equal(entries.Select(Json), read.Select(Json));
        Assert.Equal(entries, read);
        Assert.True((await _record.Store.FindAsync("s1", Cancel))!.Ended);
    }

    [Fact]
    public async Task ReadLogAsync_MoreStepsThanOnePiece_GivesAllInOrder()
    {
        await _record.Store.CreateAsync(Setup(), Drill(), Cancel);
        await Task.WhenAll(Enumerable.Range(1, 1100).Select(i => _record.Store.AppendAsync("s1", Noted(i), Cancel)));

        var read = await LogAsync(_record.Store, "s1");
        Assert.Equal(Enumerable.Range(1, 1100).Select(i => (long)i), read.Select(entry => entry.Sequence));
    }

    [Fact]
    public async Task CreateAsync_SameDrillTwiceAndAnotherVersion_KeepsEachContentOnce()
    {
        var changed = Drill(text: """{ "id": "arrow-narrowing", "changed": true }""");
        await _record.Store.CreateAsync(Setup("s1"), Drill(), Cancel);
        await _record.Store.CreateAsync(Setup("s2"), Drill(), Cancel);
        await _record.Store.CreateAsync(Setup("s3", drill: changed), changed, Cancel);

        using var tables = _record.Tables();
        Assert.Equal(
            new[] { Drill().Hash, changed.Hash }.Order(),
            (await tables.Drills.Select(drill => drill.Hash).ToListAsync(Cancel)).Order());
        Assert.Equal(changed.Json, (await _record.Store.FindAsync("s3", Cancel))!.DrillJson);
    }

    [Fact]
    public async Task CreateAsync_IdThatIsTaken_IsRefusedAndTheFirstStays()
    {
        await _record.Store.CreateAsync(Setup(), Drill(), Cancel);
        var refused = await Assert.ThrowsAsync<InvalidOperationException>(
            () => _record.Store.CreateAsync(Setup(bowler: "Bo"), Drill(), Cancel));
        Assert.Contains("\"s1\"", refused.Message, StringComparison.Ordinal);
        Assert.Equal("Ann Lee", (await _record.Store.FindAsync("s1", Cancel))!.Setup.Bowler);
        Assert.Null(await _record.Store.FindBowlerAsync("Bo", Cancel));
    }

    [Fact]
    public async Task CreateAsync_SetupOfAnotherDrill_IsRefused()
    {
        await Assert.ThrowsAsync<ArgumentException>(() => _record.Store.CreateAsync(Setup() with { DrillHash = "00" }, Drill(), Cancel));
        Assert.Null(await _record.Store.FindAsync("s1", Cancel));
    }

    public void Dispose()
    {
        _record.Dispose();
        GC.SuppressFinalize(this);
    }
}
