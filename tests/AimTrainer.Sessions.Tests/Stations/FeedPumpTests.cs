using System.Runtime.CompilerServices;
using AimTrainer.Domain;

namespace AimTrainer.Sessions.Tests;

public class FeedPumpTests
{
    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Run_BadRowsAndOthersShots_AreReportedAndTheRestIsKept()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(10));
        var (kept, reports) = await PumpAsync(
            running,
            Sample.Item(10),
            new FeedItem.Unreadable(new FileProblem("shots.csv", 3, "boardAt15", "ten", "a number")),
            Sample.Item(10, "Bowler B", line: 4),
            Sample.Item(10, "bowler a", Hand.Left, 5),
            Sample.Item(11, "bowler a", Hand.Right, 6));

        Assert.Equal([1, 2], kept.Select(entry => entry.Events.OfType<SessionEvent.ShotGraded>().Single().Shot.Number));
        Assert.Equal(
            [
                "shots.csv:3: boardAt15: found ten; allowed: a number",
                "feed: line 4: this shot is Bowler B's, the session is Bowler A's: left out",
                "feed: line 5: this shot was thrown with the left hand, the session is for the right: left out",
            ],
            reports);
    }

    [Fact]
    public async Task Run_StoreFailsForAWhile_ShotIsOfferedAgainAndReportedOnce()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(10));
        var reports = new List<string>();
        var kept = new List<LogEntry>();
        var failed = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        running.Store.Failure = new StoreUnavailableException("the disk is full: free some space");
        var pump = new FeedPump(running.Station, running.Clock, kept.Add, report =>
        {
            reports.Add(report);
            failed.TrySetResult();
        });

        var pumping = pump.RunAsync(new ListFeed([Sample.Item(10), Sample.Item(11)]), Cancelled);
        await failed.Task.WaitAsync(Cancelled);
        running.Store.Failure = null;
        while (!pumping.IsCompleted)
        {
            running.Clock.Advance(FeedPump.RetryAfter);
            await Task.Yield();
        }

        await pumping;
        Assert.Equal("feed: the disk is full: free some space; the shot is offered again until it is kept", Assert.Single(reports));
        Assert.Equal(2, kept.Count);
        Assert.Equal(2, running.Station.Snapshot.Throws);
    }

    [Fact]
    public async Task Run_SessionEnds_TheRestIsNotRead()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(2));
        var feed = new ListFeed([.. Enumerable.Range(0, 5).Select(_ => Sample.Item(10))]);

        await new FeedPump(running.Station, running.Clock, _ => { }, _ => { }).RunAsync(feed, Cancelled);

        Assert.Equal(2, feed.Read);
    }

    [Fact]
    public async Task Run_NoSession_SaysSo()
    {
        await using var running = new RunningStation();

        var (kept, reports) = await PumpAsync(running, Sample.Item(10));

        Assert.Empty(kept);
        Assert.Equal("feed: station 1 has no session: start one first", Assert.Single(reports));
    }

    private static async Task<(List<LogEntry> Kept, List<string> Reports)> PumpAsync(RunningStation running, params FeedItem[] items)
    {
        var (kept, reports) = (new List<LogEntry>(), new List<string>());
        await new FeedPump(running.Station, running.Clock, kept.Add, reports.Add).RunAsync(new ListFeed(items), Cancelled);
        return (kept, reports);
    }

    private sealed class ListFeed(FeedItem[] items) : IShotFeed
    {
        public string Name => "feed";

        public int Read { get; private set; }

        public async IAsyncEnumerable<FeedItem> ReadAsync([EnumeratorCancellation] CancellationToken cancellationToken)
        {
            foreach (var item in items)
            {
                cancellationToken.ThrowIfCancellationRequested();
                Read++;
                yield return item;
            }

            await Task.CompletedTask;
        }
    }
}
