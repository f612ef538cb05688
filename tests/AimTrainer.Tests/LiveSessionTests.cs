using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;

namespace AimTrainer.Tests;

public sealed class LiveSessionTests : IDisposable
{
    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Run_FileOfWhichNothingCanBeRead_IsRefusedAndLeavesNoSession()
    {
        var shots = _work.File("shots.csv", "time,board at arrows\n2026-03-02T18:00:00Z,10\n");

        var ran = _work.Run("run", "--drill", "ten-shot-spread", "--shots", shots);

        Assert.Equal(2, ran.Code);
        Assert.Contains("shots.csv:1: board at arrows: found an unknown column", ran.Error, StringComparison.Ordinal);
        Assert.Contains("no shot in it could be read; nothing was done", ran.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(_work.Data, "aimtrainer.db")));
    }

    [Fact]
    public async Task Console_BesideASession_SaysWhereTheRecordIs()
    {
        await using var live = await LiveSession.OpenAsync(_work.Data, 1, new JsonLinesView(UserConsole.OfProcess() with { Out = TextWriter.Null }), null);
        await using var pages = await LiveConsole.OpenAsync(live, TestContext.Current.CancellationToken);
        using var browser = new HttpClient { BaseAddress = new Uri(pages!.Address) };

        Assert.Contains($"<code>{live.RecordPlace}</code>", await browser.GetStringAsync("/settings", TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Names_OnTheDisplaysOfARun_AreShownAsWasAgreed()
    {
        new PeopleRegister(_work.Data).Save(new BowlerConsent { Bowler = "Ann Lee", Shown = NameShown.GivenName });
        var drill = new DrillLibrary(null).Read("ten-shot-spread");
        await using var live = await LiveSession.OpenAsync(_work.Data, 1, new JsonLinesView(UserConsole.OfProcess() with { Out = TextWriter.Null }), null);

        await live.StartAsync(
            new SessionSetup
            {
                SessionId = "one",
                At = live.Clock.GetUtcNow(),
                Station = 1,
                Bowler = "Ann Lee",
                Hand = Hand.Right,
                DrillId = drill.Script.Id,
                DrillHash = drill.Hash,
                Lane = LaneProfileReader.Default,
                Seed = 1,
            },
            drill);

        Assert.Equal("Ann", live.Station.Snapshot.ScreenName);
    }
}
