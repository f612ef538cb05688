using AimTrainer.Display;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using AimTrainer.Setup;
using Microsoft.Extensions.DependencyInjection;

namespace AimTrainer.Tests;

/// <summary>
/// Several bowlers take turns on a lane of a real host: a display that only reads its folder shows what the host's own screens show,
/// whose turn it is and names as they may be shown. Names are invented.
/// </summary>
public sealed class SharedDisplayTests : IAsyncLifetime
{
    private readonly Workplace _work = new();
    private readonly NewsSlot _slot = new(new DisplayNews(SessionSnapshot.Idle(1), null), () => { });
    private ConsoleHost _host = null!;
    private DisplayRecord _record = null!;
    private int _shots;
    private int _sessions;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private Station Lane => _host.Services.GetRequiredService<IReadOnlyList<Station>>()[0];

    private SessionSnapshot Seen => _slot.Newest.Snapshot;

    public async ValueTask InitializeAsync()
    {
        await OpenAsync();
        _record = new DisplayRecord(_work.Data, 1, TimeProvider.System, _slot);
    }

    public async ValueTask DisposeAsync()
    {
        await _host.DisposeAsync();
        _work.Dispose();
    }

    [Fact]
    public async Task Look_BowlersTakeTurns_ShowsWhoseTurnItIsAfterEveryShot()
    {
        var ann = await JoinAsync("Ann Aspen");
        await SameAsync();
        var ben = await JoinAsync("Ben Birch");
        var cas = await JoinAsync("Cas Cedar");
        await SameAsync();

        // The session that began last is not the one whose turn it is.
        Assert.Equal((ann, "A. A."), (Seen.Setup!.SessionId, Seen.ScreenName));
        foreach (var next in (string[])[ben, cas, ann, ben])
        {
            await ThrowAsync();
            await SameAsync();
            Assert.Equal(next, Seen.Setup!.SessionId);
        }

        Assert.Equal(("Ann Aspen", 2), (Seen.Turns!.Last!.Bowler, Seen.Turns.Last.Number));
        Assert.Contains("B. B. throws, then C. C.", Words(Seen), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Look_PeopleChangeTheOrder_IsFollowedWithoutAShot()
    {
        var ann = await JoinAsync("Ann Aspen");
        var ben = await JoinAsync("Ben Birch");
        await ThrowAsync();
        await SameAsync();
        Assert.Equal(ben, Seen.Setup!.SessionId);

        TurnChange[] changes =
        [
            new TurnChange.Skip(), new TurnChange.Give(ben), new TurnChange.Length(2), new TurnChange.Swap(ann, ben), new TurnChange.Leave(ann), new TurnChange.Leave(ben), new TurnChange.Return(ben),
        ];
        foreach (var change in changes)
        {
            Kept(await Lane.TurnAsync(change, null, Cancel));
            await SameAsync();
        }

        await JoinAsync("Cas Cedar");
        await ThrowAsync();
        await ThrowAsync();
        Kept(await Lane.FollowAsync(new SessionInput.VoidShot(DateTimeOffset.UtcNow, 1, "foul"), ann, Cancel));
        await SameAsync();
        Kept(await Lane.FollowAsync(new SessionInput.End(DateTimeOffset.UtcNow, "enough"), ben, Cancel));
        await SameAsync();
        Assert.Equal(TurnStatus.Done, Seen.Turns!.Places.AsEnumerable().Single(place => place.SessionId == ben).Status);
    }

    [Fact]
    public async Task Look_SeveralShotsSinceTheLastLook_AndARestart_AreCaughtUp()
    {
        await JoinAsync("Ann Aspen");
        await JoinAsync("Ben Birch");
        await SameAsync();
        for (var i = 0; i < 5; i++)
        {
            await ThrowAsync();
        }

        await SameAsync();
        await _host.DisposeAsync();
        await OpenAsync();
        await SameAsync();
        await ThrowAsync();
        await SameAsync();

        // A display that is started only now has the same picture.
        var late = new NewsSlot(new DisplayNews(SessionSnapshot.Idle(1), null), () => { });
        await new DisplayRecord(_work.Data, 1, TimeProvider.System, late).LookAsync(Cancel);
        Assert.Equal(Words(Lane.Snapshot), Words(late.Newest.Snapshot));
        Assert.Equal(Lane.Snapshot.Turns, late.Newest.Snapshot.Turns);
    }

    [Fact]
    public async Task Look_TheOrderAsShotsMovedItWasNotKept_IsWorkedOutFromTheLogs()
    {
        await JoinAsync("Ann Aspen");
        var ben = await JoinAsync("Ben Birch");
        var file = Path.Combine(_work.Data, "lanes", "lane-1.json");
        var before = await File.ReadAllBytesAsync(file, Cancel);
        await ThrowAsync();

        // As when the machine lost power before the small file was on its disk: only the shot was.
        await File.WriteAllBytesAsync(file, before, Cancel);
        await _record.LookAsync(Cancel);

        Assert.Equal(ben, Seen.Setup!.SessionId);
        Assert.Equal(ben, Seen.Turns!.Now!.SessionId);
    }

    [Fact]
    public async Task Look_WhatWasAgreedAboutNames_IsShownAndFollowedWhenItChanges()
    {
        var people = _host.Services.GetRequiredService<PeopleRegister>();
        await JoinAsync("Ann Aspen");
        await JoinAsync("Ben Birch");
        await SameAsync();
        Assert.Contains("A. A. throws, then B. B.", Words(Seen), StringComparison.Ordinal);

        people.Save(new BowlerConsent { Bowler = "Ann Aspen", Shown = NameShown.FullName });
        people.Save(new BowlerConsent { Bowler = "Ben Birch", Shown = NameShown.FullName, IsMinor = true, Guardian = "Bo Birch", GuardianAgreedOn = new DateOnly(2026, 3, 1) });
        Kept(await Lane.RenameAsync(Cancel));
        await SameAsync();
        Assert.Contains("Ann Aspen, then Ben", Words(Seen), StringComparison.Ordinal);
        Assert.DoesNotContain("Birch", Words(Seen), StringComparison.Ordinal);

        people.Save(new BowlerConsent { Bowler = "Ann Aspen", Shown = NameShown.Initials });
        Kept(await Lane.RenameAsync(Cancel));
        await SameAsync();
        Assert.Contains("A. A. throws, then Ben", Words(Seen), StringComparison.Ordinal);

        // What was agreed cannot be read any more: then what may be shown without asking.
        await File.WriteAllTextAsync(Path.Combine(_work.Data, PeopleRegister.FileName), "{ half", Cancel);
        await _record.LookAsync(Cancel);
        Assert.Contains("A. A. throws, then B. B.", Words(Seen), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Look_OneAlone_IsShownByTheNameThatWasAgreed()
    {
        _host.Services.GetRequiredService<PeopleRegister>().Save(new BowlerConsent { Bowler = "Ann Aspen", Shown = NameShown.GivenName });
        var setup = SetupOf("Ann Aspen");
        Kept(await Lane.StartAsync(setup, Drill, Cancel));
        await SameAsync();

        Assert.Equal("Ann", Seen.ScreenName);
        Assert.Null(Seen.Turns);
    }

    [Fact]
    public async Task Look_AnotherJoinsOneWhoThrewAlone_KeepsHerShotAsTheLanesLast()
    {
        var setup = SetupOf("Ann Aspen");
        Kept(await Lane.StartAsync(setup, Drill, Cancel));
        Kept(await Lane.FollowAsync(new SessionInput.Begin(DateTimeOffset.UtcNow), Cancel));
        await ThrowAsync();
        await SameAsync();
        await JoinAsync("Ben Birch");
        await SameAsync();

        Assert.Equal((setup.SessionId, 1), (Seen.Turns!.Last!.SessionId, Seen.Turns.Last.Number));
    }

    [Fact]
    public async Task Look_AllAreDoneAndSomebodyComesAlone_ShowsTheEndAndThenHer()
    {
        foreach (var id in (string[])[await JoinAsync("Ann Aspen"), await JoinAsync("Ben Birch")])
        {
            await SameAsync();
            Kept(await Lane.FollowAsync(new SessionInput.End(DateTimeOffset.UtcNow, "enough"), id, Cancel));
        }

        await SameAsync();
        Assert.Equal(SessionPhase.Ended, Seen.Phase);
        var order = await File.ReadAllBytesAsync(Path.Combine(_work.Data, "lanes", "lane-1.json"), Cancel);
        var dee = SetupOf("Dee Dogwood");
        Kept(await Lane.StartAsync(dee, Drill, Cancel));
        await SameAsync();
        Assert.Equal(dee.SessionId, Seen.Setup!.SessionId);

        // An order that is over may lie there: it could not be deleted.
        await File.WriteAllBytesAsync(Path.Combine(_work.Data, "lanes", "lane-1.json"), order, Cancel);
        await _record.LookAsync(Cancel);
        Assert.Equal(dee.SessionId, Seen.Setup!.SessionId);
        Assert.Null(Seen.Turns);
    }

    [Fact]
    public async Task Look_TheOrderCannotBeRead_KeepsThePictureAndSaysWhat()
    {
        await JoinAsync("Ann Aspen");
        var ben = await JoinAsync("Ben Birch");
        await ThrowAsync();
        await SameAsync();
        var file = Path.Combine(_work.Data, "lanes", "lane-1.json");
        await File.WriteAllTextAsync(file, "{ half", Cancel);
        for (var i = 0; i < 5; i++)
        {
            await _record.LookAsync(Cancel);
        }

        Assert.Equal(ben, Seen.Setup!.SessionId);
        Assert.Contains($"{file}: the order of this lane cannot be kept or read", _slot.Newest.Notice, StringComparison.Ordinal);

        // The host writes it anew with the next shot.
        await ThrowAsync();
        await SameAsync();
        Assert.Null(_slot.Newest.Notice);
    }

    private static DrillSource Drill { get; } = new DrillLibrary(null).Read("ten-shot-spread");

    /// <summary>Each a second after the last: the newest session is told by when it began.</summary>
    private SessionSetup SetupOf(string bowler) => new SessionWish { Bowler = bowler, Drill = Drill, Lane = LaneProfileReader.Default, Hand = Hand.Right }
        .ToSetup(1, null, DateTimeOffset.UtcNow.AddSeconds(++_sessions));

    private static string Words(SessionSnapshot snapshot) =>
        SceneText.Write(OverheadScene.Build(new OverheadSceneInput { Snapshot = snapshot, SinceShot = TimeSpan.FromSeconds(1) }))
        + SceneText.Write(ProjectorScene.Build(new ProjectorSceneInput { Snapshot = snapshot, SinceShot = TimeSpan.FromSeconds(1) }));

    private static void Kept(StationReply reply) => Assert.True(reply is StationReply.Kept, reply.ToString());

    /// <summary>The display shows what the host's own screens show.</summary>
    private async Task SameAsync()
    {
        await _record.LookAsync(Cancel);
        var host = Lane.Snapshot;
        Assert.Equal((host.Setup!.SessionId, host.Version, host.Shown, host.NameOnScreen), (Seen.Setup!.SessionId, Seen.Version, Seen.Shown, Seen.NameOnScreen));
        Assert.Equal(host.Turns, Seen.Turns);
        Assert.Equal(Words(host), Words(Seen));
    }

    private async Task<string> JoinAsync(string bowler)
    {
        var setup = SetupOf(bowler);
        Kept(await Lane.JoinAsync(setup, Drill, Cancel));
        Kept(await Lane.FollowAsync(new SessionInput.Begin(DateTimeOffset.UtcNow), setup.SessionId, Cancel));
        return setup.SessionId;
    }

    private async Task ThrowAsync()
    {
        _shots++;
        var reading = new ShotReading { Id = $"s{_shots}" };
        reading.AddCrossing(15, 9.5 + (_shots % 3));
        var shot = reading.Check(out var problems);
        Kept(await Lane.ThrowAsync(shot ?? throw new InvalidOperationException(string.Join("; ", problems)), Cancel));
    }

    private async Task OpenAsync() => _host = await ConsoleHost.OpenAsync(new ConsoleOptions { DataFolder = _work.Data, Urls = "http://127.0.0.1:0", Stations = 2 }, Cancel);
}
