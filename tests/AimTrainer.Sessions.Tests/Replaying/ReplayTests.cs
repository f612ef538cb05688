using AimTrainer.Domain;

namespace AimTrainer.Sessions.Tests;

public class ReplayTests
{
    [Fact]
    public void Run_ShotsEnough_IsCompleteAndCountsWhatIsLeftOver()
    {
        var (outcome, events, _) = Run(Sample.Shots(3), [.. Enumerable.Range(0, 5).Select(_ => Sample.Item(10))]);

        Assert.Equal(new ReplayOutcome(true, 3, 0, 2), outcome);
        Assert.Equal(new SessionEvent.SessionEnded("all blocks were thrown"), events[^1]);
    }

    [Fact]
    public void Run_ShotsRunOut_SaysWhy()
    {
        var (outcome, events, _) = Run(Sample.Shots(3), Sample.Item(10));

        Assert.Equal(new ReplayOutcome(false, 1, 0, 0), outcome);
        Assert.Equal(new SessionEvent.SessionEnded("the shots ran out before the drill did"), events[^1]);
    }

    [Fact]
    public void Run_NoShots_ShowsTheTargetAndSaysWhy()
    {
        var (outcome, events, _) = Run(Sample.Shots(3));

        Assert.Equal(new ReplayOutcome(false, 0, 0, 0), outcome);
        Assert.Contains(events, happened => happened is SessionEvent.AimShown);
    }

    [Fact]
    public void Run_BadRowsOthersAndRepeats_AreReportedOrCounted()
    {
        var (outcome, _, problems) = Run(
            Sample.Shots(3),
            Sample.Item(10, time: Sample.Start),
            Sample.Item(10, time: Sample.Start),
            new FeedItem.Unreadable(new FileProblem("shots.csv", 4, "", "x", "y")),
            Sample.Item(10, "Bowler B", line: 5));

        Assert.Equal(new ReplayOutcome(false, 1, 1, 0), outcome);
        Assert.Equal([4, 5], problems.Select(problem => problem.Line));
    }

    [Fact]
    public void Run_BlockByMinutes_EndsBeforeTheShotThatCameLater()
    {
        var drill = Sample.Drill(""" "until": { "minutes": 2 } """, """ "until": { "shots": 1 } """);
        var (outcome, events, _) = Run(
            drill,
            Sample.Item(10, time: Sample.Start.AddHours(1)),
            Sample.Item(10, time: Sample.Start.AddHours(1).AddSeconds(119)),
            Sample.Item(11, time: Sample.Start.AddHours(1).AddSeconds(121)));

        Assert.True(outcome.Complete);
        Assert.Equal([0, 0, 1], events.OfType<SessionEvent.ShotGraded>().Select(graded => graded.Shot.Run));
    }

    [Fact]
    public void Run_LastBlockByMinutes_LaterShotIsLeftOver()
    {
        var (outcome, _, _) = Run(
            Sample.Drill(""" "until": { "minutes": 2 } """), Sample.Item(10, time: Sample.Start), Sample.Item(11, time: Sample.Start.AddMinutes(3)));

        Assert.Equal(new ReplayOutcome(true, 1, 0, 1), outcome);
    }

    private static (ReplayOutcome Outcome, List<SessionEvent> Events, List<FileProblem> Problems) Run(DrillSource drill, params FeedItem[] items)
    {
        var (events, problems) = (new List<SessionEvent>(), new List<FileProblem>());
        var state = SessionCore.Open(Sample.Setup(), drill.Script).State!;
        var outcome = Replay.Run(state, items, (_, happened) => events.AddRange(happened), problems.Add);
        return (outcome, events, problems);
    }
}
