using AimTrainer.Display;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using AimTrainer.Setup;

namespace AimTrainer.Tests;

/// <summary>A display that only reads the record shows what the session's own process shows.</summary>
public sealed class DisplayRecordTests : IDisposable
{
    private readonly Workplace _work = new();
    private readonly NewsSlot _slot;
    private readonly DisplayRecord _record;
    private int _news;

    public DisplayRecordTests()
    {
        _slot = new NewsSlot(new DisplayNews(SessionSnapshot.Idle(1), null), () => _news++);
        _record = new DisplayRecord(_work.Data, 1, TimeProvider.System, _slot);
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => _work.Dispose();

    [Fact]
    public async Task Look_NoRecordYet_SaysSoOnceAndShowsTheSessionOnceThereIsOne()
    {
        await _record.LookAsync(Cancel);
        await _record.LookAsync(Cancel);
        Assert.StartsWith($"{_work.Data}: no record here yet", _slot.Newest.Notice, StringComparison.Ordinal);
        Assert.Equal(1, _news);

        _work.Typed("15/7\n", "run", "--drill", "two-point-line");
        await _record.LookAsync(Cancel);

        Assert.Null(_slot.Newest.Notice);
        Assert.Equal((SessionPhase.Throwing, 2), (_slot.Newest.Snapshot.Phase, _slot.Newest.Snapshot.NextNumber));
    }

    [Fact]
    public async Task Look_SessionGoesOn_TakesTheNewStepsOnly()
    {
        _work.Typed("15/7\n", "run", "--drill", "two-point-line");
        await _record.LookAsync(Cancel);
        await _record.LookAsync(Cancel);
        Assert.Equal(1, _news);

        _work.Typed("14/8\npause\n", "run", "--go-on");
        await _record.LookAsync(Cancel);

        Assert.Equal((SessionPhase.Paused, 3, 2), (_slot.Newest.Snapshot.Phase, _slot.Newest.Snapshot.NextNumber, _slot.Newest.Snapshot.LastShots.Count));
        Assert.Equal(2, _news);
    }

    [Fact]
    public async Task Look_SessionEndsAndAnotherBegins_ShowsTheEndAndThenTheOther()
    {
        _work.Typed("15/7\n", "run", "--drill", "two-point-line");
        await _record.LookAsync(Cancel);
        _work.Typed("end\n", "run", "--go-on");
        await _record.LookAsync(Cancel);
        Assert.Equal(SessionPhase.Ended, _slot.Newest.Snapshot.Phase);

        _work.Typed("10\n", "run", "--drill", "ten-shot-spread");
        await _record.LookAsync(Cancel);

        Assert.Equal("ten-shot-spread", _slot.Newest.Snapshot.Drill!.Id);
    }

    [Fact]
    public async Task Look_SessionWasOverBefore_ShowsNone()
    {
        _work.Typed("15/7\nend\n", "run", "--drill", "two-point-line");
        await _record.LookAsync(Cancel);

        Assert.Null(_slot.Newest.Snapshot.Phase);
        Assert.Null(_slot.Newest.Notice);
    }

    [Fact]
    public async Task Look_AnotherStationsSession_IsNotShown()
    {
        _work.Typed("15/7\n", "run", "--drill", "two-point-line", "--station", "2");
        await _record.LookAsync(Cancel);

        Assert.Null(_slot.Newest.Snapshot.Phase);
    }

    [Fact]
    public async Task Look_RecordGoesAwayAndComesBack_KeepsThePictureAndSaysSo()
    {
        _work.Typed("15/7\n14/8\n", "run", "--drill", "two-point-line");
        await _record.LookAsync(Cancel);
        var file = Path.Combine(_work.Data, "aimtrainer.db");

        File.Move(file, file + ".away");
        await _record.LookAsync(Cancel);
        Assert.Null(_slot.Newest.Notice);
        await _record.LookAsync(Cancel);
        Assert.StartsWith($"{_work.Data}: no record here yet", _slot.Newest.Notice, StringComparison.Ordinal);
        Assert.Equal(3, _slot.Newest.Snapshot.NextNumber);

        await File.WriteAllTextAsync(file, "this is no database, whatever its name says, and it is long enough to be looked at", Cancel);
        for (var i = 0; i < 5; i++)
        {
            await _record.LookAsync(Cancel);
        }

        Assert.Contains(file, _slot.Newest.Notice, StringComparison.Ordinal);
        Assert.Equal(3, _slot.Newest.Snapshot.NextNumber);

        File.Move(file + ".away", file, overwrite: true);
        await _record.LookAsync(Cancel);
        Assert.Null(_slot.Newest.Notice);
        Assert.Equal(3, _slot.Newest.Snapshot.NextNumber);
    }

    [Fact]
    public async Task Look_OlderBackupIsRestored_ShowsWhatTheRecordHasNow()
    {
        var backup = Path.Combine(_work.Folder, "backup.db");
        _work.Typed("15/7\n", "run", "--drill", "two-point-line");
        _work.Run("backup", backup);
        _work.Typed("15/7\n15/7\n", "run", "--go-on");
        await _record.LookAsync(Cancel);
        Assert.Equal(4, _slot.Newest.Snapshot.NextNumber);

        _work.Run("restore", backup);
        await _record.LookAsync(Cancel);

        Assert.Equal(2, _slot.Newest.Snapshot.NextNumber);
    }

    [Fact]
    public async Task Look_ShotsVoidedAndCorrected_ShowsThemAsTheyStand()
    {
        _work.Typed("15/7\n14.2/9\n?\nvoid 2 foul\ncorrect 1 15.5/7\n16/6\n", "run", "--drill", "two-point-line");
        await _record.LookAsync(Cancel);

        var shots = _slot.Newest.Snapshot.LastShots;
        Assert.Equal([4, 3, 2, 1], shots.Select(shot => shot.Number));
        Assert.Equal("foul", shots[2].VoidReason);
        Assert.Equal(3, _slot.Newest.Snapshot.Throws);
    }
}
