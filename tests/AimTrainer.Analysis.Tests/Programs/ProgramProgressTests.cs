using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

public sealed class ProgramProgressTests
{
    private static readonly DateOnly Starts = new(2026, 9, 1);

    [Fact]
    public void Of_DoneMadeUpMissedAndToCome_EachSessionCountsOnce()
    {
        // The test of the 15th is week 3's own, in its week; what came on the 16th makes up week 2 (1st week's end on the 7th, 2nd on the 14th, 7 days more).
        var progress = Of(22, Thrown("a", "test", 1), Thrown("b", "test", 15), Thrown("c", "train", 15), Thrown("d", "test", 16));

        Assert.Equal([SessionStanding.Done, SessionStanding.MadeUp, SessionStanding.Done, SessionStanding.Open], progress.Sessions.Select(one => one.Standing));
        Assert.Equal(["d", "c"], progress.Sessions[1].SessionIds);
        Assert.Equal((3, 0, false), (progress.Done, progress.Missed, progress.IsComplete));
        Assert.Equal("s4", progress.Next!.Session.Name);
    }

    [Fact]
    public void Of_NothingLeftToMakeItUpWith_IsMissedOnceTheDaysAreOver()
    {
        ThrownDrill[] thrown = [Thrown("a", "test", 1), Thrown("b", "test", 15), Thrown("c", "train", 15)];

        Assert.Equal(SessionStanding.Open, Of(21, thrown).Sessions[1].Standing);
        Assert.Equal(SessionStanding.Missed, Of(22, thrown).Sessions[1].Standing);
    }

    [Fact]
    public void Of_BeforeItsFirstDay_EverythingIsToCome() =>
        Assert.All(Of(0).Sessions, session => Assert.Equal(SessionStanding.ToCome, session.Standing));

    [Fact]
    public void Of_OpenSessionOfTheRecord_CountsForNothing() =>
        Assert.Equal(SessionStanding.Open, Of(2, Thrown("a", "test", 1) with { Ended = false }).Sessions[0].Standing);

    [Theory]
    [InlineData(27, 30, GoalStanding.Reached)]
    [InlineData(15, 30, GoalStanding.CannotTell)]
    [InlineData(3, 30, GoalStanding.NotYet)]
    [InlineData(0, 0, GoalStanding.NotKnown)]
    public void Goals_ByTestBlocksAlone_NeedTheWholeIntervalOnOneSide(int held, int graded, GoalStanding standing)
    {
        var progress = ProgramProgress.Of(
            Program(), Starts, "new", [Thrown("a", "test", 1)],
            [Block("a", BlockKind.Test, held, graded), Block("a", BlockKind.Training, 30, 30)], Starts);

        var goal = Assert.Single(progress.Sessions[0].Goals);
        Assert.Equal((standing, graded), (goal.Standing, goal.Rate.Shots));
    }

    private static ProgramProgress Of(int day, params ThrownDrill[] thrown) =>
        ProgramProgress.Of(Program(), Starts, "new", thrown, [], Starts.AddDays(day - 1));

    private static ThrownDrill Thrown(string id, string drill, int dayOfMonth) =>
        new(id, drill, new DateTimeOffset(2026, 9, dayOfMonth, 20, 0, 0, TimeSpan.Zero), Ended: true);

    private static PracticeBlock Block(string session, BlockKind kind, int held, int graded) =>
        new(session, default, 0, "block", kind, null, "arrow 2", 15, graded, graded, held, 0, 0, 0, null, null, 0);

    private static ProgramScript Program()
    {
        PlannedSession Session(string name, params string[] drills) =>
            new(name, false, drills.Select(id => new PlannedDrill(id, null, id == "test" ? [new LevelGoal("new", 0.5), new LevelGoal("old", 0.9)] : [])).ToValueList());
        return new ProgramScript
        {
            Id = "p",
            Name = "P",
            Purpose = "A test.",
            WhoFor = "Tests.",
            Joining = new ProgramJoining("Anybody.", MinorsRule.Yes, null),
            MakeUp = new ProgramMakeUp(7, 1),
            Levels = [new ProgramLevel("new", "n"), new ProgramLevel("old", "o")],
            Weeks =
            [
                new PlannedWeek("1", [Session("s1", "test")]), new PlannedWeek("2", [Session("s2", "test", "train")]),
                new PlannedWeek("3", [Session("s3", "test")]), new PlannedWeek("4", [Session("s4", "test")]),
            ],
        };
    }
}
