using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public abstract class AppendContract(TestRecord record) : IDisposable
{
    private readonly TestRecord _record = record;

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(-1)]
    public async Task AppendAsync_NotTheNextStep_IsRefusedAndNothingKept(long sequence)
    {
        await _record.Store.CreateAsync(Setup(), Drill(), Cancel);
        await _record.Store.AppendAsync("s1", Noted(1), Cancel);

        var refused = await Assert.ThrowsAsync<InvalidOperationException>(() => _record.Store.AppendAsync("s1", Noted(sequence), Cancel));
        Assert.Contains("the next one, which is 2", refused.Message, StringComparison.Ordinal);
        await _record.Store.AppendAsync("s1", Noted(2), Cancel);
        Assert.Equal([1L, 2L], (await LogAsync(_record.Store, "s1")).Select(entry => entry.Sequence));
    }

    [Fact]
    public async Task AppendAsync_UnknownSession_IsRefused()
    {
        var refused = await Assert.ThrowsAsync<InvalidOperationException>(() => _record.Store.AppendAsync("s9", Noted(1), Cancel));
        Assert.Contains("s9", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AppendAsync_AfterReopening_GoesOnFromTheLastStep()
    {
        await KeepAsync(_record.Store, Setup(), Shot());
        _record.Reopen();

        await Assert.ThrowsAsync<InvalidOperationException>(() => _record.Store.AppendAsync("s1", Noted(2), Cancel));
        await _record.Store.AppendAsync("s1", Thrown(3, Graded(2, Shot())), Cancel);

        using var tables = _record.Tables();
        Assert.Equal(["second arrow", "second arrow"], await tables.GradedShots.Select(shot => shot.BlockName).ToListAsync(Cancel));
    }

    [Fact]
    public async Task AppendAsync_ManySessionsAtOnce_KeepsEachInOrder()
    {
        const int Sessions = 24, Steps = 25;
        for (var session = 0; session < Sessions; session++)
        {
            await _record.Store.CreateAsync(Setup($"s{session}", $"bowler {session % 5}"), Drill(), Cancel);
        }

        await Task.WhenAll(Enumerable.Range(0, Sessions).Select(session => Task.Run(
            async () =>
            {
                await _record.Store.AppendAsync($"s{session}", Began(), Cancel);
                for (var step = 2; step <= Steps; step++)
                {
                    await _record.Store.AppendAsync($"s{session}", Thrown(step, Graded(step - 1, Shot())), Cancel);
                }
            },
            Cancel)));

        for (var session = 0; session < Sessions; session++)
        {
            var log = await LogAsync(_record.Store, $"s{session}");
            Assert.Equal(Enumerable.Range(1, Steps).Select(i => (long)i), log.Select(entry => entry.Sequence));
        }

        using var tables = _record.Tables();
        Assert.Equal(Sessions * (Steps - 1), await tables.GradedShots.CountAsync(Cancel));
        Assert.Equal(Sessions * (Steps - 1) * 2, await tables.ShotTargets.CountAsync(Cancel));
        Assert.All(await tables.Sessions.ToListAsync(Cancel), session => Assert.Equal(Steps - 1, session.Shots));
    }

    [Fact]
    public async Task AppendAsync_OneStepOfManyRefused_KeepsTheOthers()
    {
        for (var session = 0; session < 20; session++)
        {
            await _record.Store.CreateAsync(Setup($"s{session}"), Drill(), Cancel);
            await _record.Store.AppendAsync($"s{session}", Began(), Cancel);
            await _record.Store.AppendAsync($"s{session}", Thrown(2, Graded(1, Shot())), Cancel);
        }

        // Session 7 gives a shot number twice, which only the database finds; session 11 leaves a step out.
        var kept = Enumerable.Range(0, 20).Select(session => _record.Store.AppendAsync(
            $"s{session}", Thrown(session == 11 ? 4 : 3, Graded(session == 7 ? 1 : 2, Shot())), Cancel)).ToList();
        await Assert.ThrowsAsync<InvalidOperationException>(() => kept[7]);
        await Assert.ThrowsAsync<InvalidOperationException>(() => kept[11]);
        for (var session = 0; session < 20; session++)
        {
            if (session is not 7 and not 11)
            {
                await kept[session];
            }

            Assert.Equal(session is 7 or 11 ? 2 : 3, (await LogAsync(_record.Store, $"s{session}")).Count);
        }

        await _record.Store.AppendAsync("s7", Thrown(3, Graded(2, Shot())), Cancel);
    }

    [Fact]
    public async Task AppendAsync_ManyStepsOfOneSessionWithoutWaiting_KeepsAllInOrder()
    {
        await _record.Store.CreateAsync(Setup(), Drill(), Cancel);
        await Task.WhenAll(Enumerable.Range(1, 3000).Select(i => _record.Store.AppendAsync("s1", Noted(i), Cancel)));
        Assert.Equal(3000, (await LogAsync(_record.Store, "s1")).Count);
    }

    [Fact]
    public async Task AppendAsync_AlreadyCancelled_KeepsNothing()
    {
        await _record.Store.CreateAsync(Setup(), Drill(), Cancel);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => _record.Store.AppendAsync("s1", Noted(1), new CancellationToken(true)));
        Assert.Empty(await LogAsync(_record.Store, "s1"));
    }

    [Fact]
    public async Task AppendAsync_AfterDispose_Throws()
    {
        await _record.Store.CreateAsync(Setup(), Drill(), Cancel);
        _record.Store.Dispose();
        await Assert.ThrowsAsync<ObjectDisposedException>(() => _record.Store.AppendAsync("s1", Noted(1), Cancel));
    }

    public void Dispose()
    {
        _record.Dispose();
        GC.SuppressFinalize(this);
    }
}
