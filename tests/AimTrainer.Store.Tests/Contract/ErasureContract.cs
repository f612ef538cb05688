using AimTrainer.Sessions;
using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

/// <summary>What is erased is gone, whichever database held it; what is not erased is as it was.</summary>
public abstract class ErasureContract(TestRecord record) : IDisposable
{
    private readonly TestRecord _record = record;
    private readonly TemporaryFolder _folder = new();

    private Erasures List => new(_folder.Path);

    private RecordErasure Erasing => new(_record.Store, _folder.Path, TimeProvider.System);

    [Fact]
    public async Task EraseBowlerAsync_AmongOthers_TakesEveryRowOfHersAndNoneOfTheOthers()
    {
        await PlayAsync("hers", "Ann Lee");
        await PlayAsync("hers-too", "ANN  lee");
        await PlayAsync("his", "Ben", ends: false);
        await _record.Store.KeepBallAsync(BallContract.Described, Cancel);
        await _record.Store.AddSurfaceAsync("Ann Lee", "Blue One", Sanded, Cancel);
        await _record.Store.KeepBallAsync(BallContract.Described with { Bowler = "Ben" }, Cancel);
        await _record.Store.AddSurfaceAsync("Ben", "Blue One", Sanded, Cancel);

        var (erased, why) = await Erasing.EraseBowlerAsync(" ann LEE ", Cancel);

        Assert.Null(why);
        Assert.Equal(["hers", "hers-too"], erased!.Sessions);
        Assert.Null(await _record.Store.FindAsync("hers", Cancel));
        Assert.Equal((1, 1, 1, 1, 4, 3, 6), await RowsAsync());
        var noted = Assert.Single(List.All());
        Assert.Equal((erased.Id, erased.Sessions), (noted.Id, noted.Sessions));
        Assert.NotNull(noted.FinishedAt);
        Assert.Null(noted.ChainToldAt);

        // The writer goes on as if nothing had been.
        await _record.Store.AppendAsync("his", Thrown(5, Graded(4, Shot())), Cancel);
        Assert.Equal(5, (await LogAsync(_record.Store, "his")).Count);
        await Assert.ThrowsAsync<InvalidOperationException>(() => _record.Store.AppendAsync("hers", Noted(6), Cancel));
    }

    [Fact]
    public async Task EraseBowlerAsync_OfWhomOnlyABallIsKept_TakesIt()
    {
        await _record.Store.KeepBallAsync(BallContract.Described, Cancel);
        await _record.Store.AddSurfaceAsync("Ann Lee", "Blue One", Sanded, Cancel);

        Assert.Empty((await Erasing.EraseBowlerAsync("Ann Lee", Cancel)).Erased!.Sessions);
        Assert.Equal((0, 0, 0, 0, 0, 0, 0), await RowsAsync());
    }

    [Fact]
    public async Task EraseBowlerAsync_OfWhomNothingIsKept_IsNullAndNotNoted()
    {
        await PlayAsync("his", "Ben");
        Assert.Equal((null, null), await Erasing.EraseBowlerAsync("Nobody", Cancel));
        Assert.Empty(List.All());
        Assert.Equal(1, (await RowsAsync()).Bowlers);
    }

    [Fact]
    public async Task EraseBowlerAsync_SessionOpenOnALane_IsRefusedAndNothingGoes()
    {
        await PlayAsync("s1", "Ann Lee");
        await PlayAsync("s2", "Ann Lee", ends: false, at: Start.AddDays(30));
        var before = await RowsAsync();

        var (erased, why) = await Erasing.EraseBowlerAsync("Ann Lee", Cancel);

        Assert.Null(erased);
        Assert.Contains("is open on lane 7: end it first", why, StringComparison.Ordinal);
        Assert.Equal(before, await RowsAsync());
        Assert.Empty(List.All());
        await _record.Store.AppendAsync("s2", Ended(5), Cancel);
        Assert.Equal(2, (await Erasing.EraseBowlerAsync("Ann Lee", Cancel)).Erased!.Sessions.Count);
    }

    [Theory]
    [InlineData(23, false)]
    [InlineData(26, true)]
    public async Task EraseBowlerAsync_SessionNeverEnded_IsOpenUntilTheLaneHasGoneOnForADay(int hours, bool goes)
    {
        await PlayAsync("left", "Ann Lee", ends: false);
        await PlayAsync("next", "Ben", at: Start.AddHours(hours));

        Assert.Equal(goes, (await Erasing.EraseBowlerAsync("Ann Lee", Cancel)).Erased is not null);
    }

    [Fact]
    public async Task EraseBowlerAsync_NeverEndedAndAnotherLaneWentOn_IsStillOpen()
    {
        await PlayAsync("left", "Ann Lee", ends: false);
        await _record.Store.CreateAsync(Setup("next", "Ben") with { Station = 8, At = Start.AddDays(3) }, Drill(), Cancel);

        Assert.NotNull((await Erasing.EraseBowlerAsync("Ann Lee", Cancel)).Why);
    }

    [Fact]
    public async Task EraseBeforeAsync_OldAndYoung_TakesTheOldThatAreOverAndBowlersOfWhomNoneIsLeft()
    {
        await PlayAsync("old", "Ann Lee");
        await PlayAsync("old-too", "Ben");
        await PlayAsync("young", "Ben", at: Start.AddMonths(2));
        await _record.Store.CreateAsync(Setup("old-open", "Cy") with { Station = 8 }, Drill(), Cancel);
        await _record.Store.KeepBallAsync(BallContract.Described with { Bowler = "Dee" }, Cancel);

        var erased = (await Erasing.EraseBeforeAsync(Start.AddMonths(1), Cancel))!;

        Assert.Equal(["old", "old-too"], erased.Sessions.Order());
        using var tables = _record.Tables();
        Assert.Equal(["Ben", "Cy", "Dee"], await tables.Bowlers.OrderBy(bowler => bowler.Name).Select(bowler => bowler.Name).ToListAsync(Cancel));
        Assert.Equal(["old-open", "young"], await tables.Sessions.OrderBy(session => session.Id).Select(session => session.Id).ToListAsync(Cancel));
        Assert.Null(await Erasing.EraseBeforeAsync(Start.AddMonths(1), Cancel));
        Assert.Single(List.All());
    }

    [Fact]
    public async Task EraseBeforeAsync_TheVeryMoment_IsKept()
    {
        await PlayAsync("s1", "Ann Lee");
        Assert.Null(await Erasing.EraseBeforeAsync(Start, Cancel));
        Assert.NotNull(await Erasing.EraseBeforeAsync(Start.AddMilliseconds(1), Cancel));
    }

    [Fact]
    public async Task EraseBeforeAsync_MoreThanOneStatementTakes_TakesThemAll()
    {
        for (var i = 0; i < 101; i++)
        {
            // Left so long ago that the lane has gone on.
            await _record.Store.CreateAsync(Setup($"s{i}", $"Bowler {i}"), Drill(), Cancel);
        }

        await PlayAsync("young", "Ben", at: Start.AddMonths(2));
        Assert.Equal(101, (await Erasing.EraseBeforeAsync(Start.AddMonths(1), Cancel))!.Sessions.Count);
        Assert.Equal((1, 1, 0, 1, 5, 3, 6), await RowsAsync());
    }

    [Fact]
    public async Task EraseForChainAsync_OpenAndUnknown_LeavesTheOpenAndNotesTheRest()
    {
        await PlayAsync("over", "Ann Lee");
        await PlayAsync("open", "Ann Lee", ends: false);

        Assert.Equal(["over", "never-here"], (await Erasing.EraseForChainAsync(["over", "open", "never-here"], Cancel))!.Sessions);
        Assert.Null(await Erasing.EraseForChainAsync(["open"], Cancel));
        Assert.NotNull(await _record.Store.FindAsync("open", Cancel));
        Assert.Equal(["over", "never-here"], Assert.Single(List.All()).Sessions);
    }

    [Fact]
    public async Task EraseAgainAsync_SessionIsThereAgain_IsErasedThoughItIsOpen()
    {
        await PlayAsync("hers", "Ann Lee");
        await PlayAsync("his", "Ben");
        await Erasing.EraseBowlerAsync("Ann Lee", Cancel);
        Assert.Equal(0, await Erasing.EraseAgainAsync(Cancel));

        // As a copy would bring it back that was made in the midst of the session.
        await PlayAsync("hers", "Ann Lee", ends: false);
        _record.Reopen();
        Assert.Equal(1, await Erasing.EraseAgainAsync(Cancel));

        Assert.Null(await _record.Store.FindBowlerAsync("Ann Lee", Cancel));
        Assert.NotNull(await _record.Store.FindAsync("his", Cancel));
        Assert.Single(List.All());
    }

    [Fact]
    public async Task EraseAgainAsync_KilledBetweenTheNoteAndTheEnd_IsSeenThrough()
    {
        await PlayAsync("hers", "Ann Lee");

        // The rows have not gone when the process ends, but the wish is on the disk.
        await Assert.ThrowsAsync<StoreUnavailableException>(() => _record.Store.EraseAsync(
            new ErasureScope.OfBowler("Ann Lee"),
            sessions =>
            {
                List.Add("e1", Start, sessions);
                throw new StoreUnavailableException("killed");
            },
            Cancel));
        _record.Reopen();
        Assert.NotNull(await _record.Store.FindAsync("hers", Cancel));

        Assert.Equal(1, await Erasing.EraseAgainAsync(Cancel));

        Assert.Equal((0, 0, 0, 0, 0, 0, 0), await RowsAsync());
        Assert.NotNull(Assert.Single(List.All()).FinishedAt);
        Assert.Equal(0, await Erasing.EraseAgainAsync(Cancel));
    }

    [Fact]
    public async Task EraseAgainAsync_ListThatCannotBeRead_NamesTheLineAndErasesNothing()
    {
        await PlayAsync("hers", "Ann Lee");
        await File.WriteAllTextAsync(_folder.File("erasures.jsonl"), "what\n", Cancel);

        var told = await Assert.ThrowsAsync<StoreUnavailableException>(() => Erasing.EraseAgainAsync(Cancel));

        Assert.Contains("erasures.jsonl:1: ", told.Message, StringComparison.Ordinal);
        Assert.NotNull(await _record.Store.FindAsync("hers", Cancel));
    }

    [Fact]
    public async Task EraseBowlerAsync_WishCannotBeNoted_LeavesEveryRowAndTheWriterWell()
    {
        await PlayAsync("hers", "Ann Lee");
        await PlayAsync("his", "Ben", ends: false);
        var before = await RowsAsync();
        Directory.CreateDirectory(_folder.File("erasures.jsonl"));

        var told = await Assert.ThrowsAsync<StoreUnavailableException>(() => Erasing.EraseBowlerAsync("Ann Lee", Cancel));

        Assert.Contains("erasures.jsonl: cannot be written", told.Message, StringComparison.Ordinal);
        Assert.Equal(before, await RowsAsync());
        await _record.Store.AppendAsync("his", Noted(5), Cancel);
        Directory.Delete(_folder.File("erasures.jsonl"));
        Assert.NotNull((await Erasing.EraseBowlerAsync("Ann Lee", Cancel)).Erased);
    }

    [Fact]
    public async Task EraseBowlerAsync_WhileShotsComeIn_LosesNoneOfTheOthers()
    {
        await PlayAsync("hers", "Ann Lee");
        await PlayAsync("his", "Ben", ends: false);
        var erasing = Erasing.EraseBowlerAsync("Ann Lee", Cancel);
        for (var number = 4; number <= 60; number++)
        {
            await _record.Store.AppendAsync("his", Thrown(number + 1, Graded(number, Shot())), Cancel);
        }

        Assert.NotNull((await erasing).Erased);
        Assert.Equal(61, (await LogAsync(_record.Store, "his")).Count);
        Assert.Equal(1, (await RowsAsync()).Sessions);
    }

    [Fact]
    public void Statements_OfABowler_NameEveryTableThatHangsOnHer()
    {
        using var tables = _record.Tables();
        var statements = ErasureStatements.For(tables, typeof(BowlerRow), "1 = 1");
        var names = tables.Model.GetEntityTypes().Where(entity => entity.ClrType != typeof(DrillRow)).Select(entity => entity.GetTableName()!).ToList();

        Assert.All(names, name => Assert.Contains(statements, statement => statement.StartsWith($"DELETE FROM \"{name}\" ", StringComparison.Ordinal)));
        Assert.Equal("DELETE FROM \"bowlers\" WHERE 1 = 1", statements[^1]);
        Assert.Equal(names.Select(name => $"\"{name}\"").Order(), ErasureStatements.Tables(tables, typeof(BowlerRow)).Order());
    }

    public void Dispose()
    {
        _record.Dispose();
        _folder.Dispose();
        GC.SuppressFinalize(this);
    }

    private static BallSurface Sanded { get; } = new(Start, BallSurfaceKind.Work, "500 grit", null, null, null, null);

    private async Task PlayAsync(string id, string bowler, bool ends = true, DateTimeOffset? at = null)
    {
        await KeepAsync(_record.Store, Setup(id, bowler) with { At = at ?? Start }, Shot(), Shot(), Shot());
        if (ends)
        {
            await _record.Store.AppendAsync(id, Ended(5), Cancel);
        }
    }

    private async Task<(int Bowlers, int Balls, int Surfaces, int Sessions, int Steps, int Shots, int Targets)> RowsAsync()
    {
        using var tables = _record.Tables();
        return (
            await tables.Bowlers.CountAsync(Cancel), await tables.Balls.CountAsync(Cancel), await tables.BallSurfaces.CountAsync(Cancel), await tables.Sessions.CountAsync(Cancel),
            await tables.LogSteps.CountAsync(Cancel), await tables.GradedShots.CountAsync(Cancel), await tables.ShotTargets.CountAsync(Cancel));
    }
}
