using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

public sealed class GroupDayTests
{
    private static readonly DateOnly Starts = new(2026, 9, 1);

    // Two weeks, 1 to 7 and 8 to 14 September; what was missed may be made up for 7 days, once.
    [Theory]
    [InlineData(0, GroupStage.ToBegin, 1)]
    [InlineData(1, GroupStage.Open, 2)]
    [InlineData(7, GroupStage.Open, 2)]
    [InlineData(14, GroupStage.Open, null)]
    [InlineData(21, GroupStage.Open, null)]
    [InlineData(22, GroupStage.Over, null)]
    public void Of_NothingThrown_EveryDayHasItsStage(int day, GroupStage stage, int? nextWeek)
    {
        var found = Of(day, [[]]);

        Assert.Equal((stage, nextWeek), (found.Stage, found.NextWeek));
        Assert.Equal(stage == GroupStage.Open, found.Open.Count > 0);
        Assert.Equal(new DateOnly(2026, 9, 14), found.LastDay);
        Assert.Equal(nextWeek is null ? null : Starts.AddDays((nextWeek.Value - 1) * 7), found.NextWeekStarts);
    }

    [Fact]
    public void Of_EverybodyHasThrownTheWeek_SaysWhenTheNextBegins()
    {
        var found = Of(3, [Thrown(1)], [Thrown(2)]);

        Assert.Equal((GroupStage.WeekDone, 2, new DateOnly(2026, 9, 8)), (found.Stage, found.NextWeek, found.NextWeekStarts));
        Assert.Empty(found.Open);
    }

    [Fact]
    public void Of_EverybodyHasThrownEverything_IsOverBeforeItsLastDay() =>
        Assert.Equal(GroupStage.Over, Of(9, [Thrown(1), Thrown(8)], [Thrown(2), Thrown(9)]).Stage);

    [Fact]
    public void Of_BowlersAtDifferentSessions_EachIsOfferedTheMostWantedFirst()
    {
        // The last bowler missed week 1 and may make it up; week 2 is open to her as to the others.
        var found = Of(9, [Thrown(1)], [Thrown(2)], []);

        Assert.Equal([("s2", 3, false, new DateOnly(2026, 9, 14)), ("s1", 1, true, new DateOnly(2026, 9, 14))], found.Open.Select(open => (open.Session.Name, open.Bowlers, open.IsMakeUp, open.LastDay)));
    }

    [Fact]
    public void Of_AClassThatMissedAWeek_MayMakeItUpOrThrowTheWeekThatIsOn() =>
        Assert.Equal(["s1", "s2"], Of(9, [], []).Open.Select(open => open.Session.Name));

    [Theory]
    [InlineData(0, GroupStage.ToBegin)]
    [InlineData(14, GroupStage.Open)]
    [InlineData(15, GroupStage.Over)]
    public void Of_NobodyInTheGroup_GoesByTheWeeks(int day, GroupStage stage) =>
        Assert.Equal(stage, GroupDay.Of(Program(), Starts, [], Starts.AddDays(day - 1)).Stage);

    private static GroupDay Of(int day, params ThrownDrill[][] bowlers)
    {
        var today = Starts.AddDays(day - 1);
        return GroupDay.Of(Program(), Starts, bowlers.Select(thrown => ProgramProgress.Of(Program(), Starts, "all", thrown, [], today)), today);
    }

    private static ThrownDrill Thrown(int day) => new($"of-{day}", "test", new DateTimeOffset(2026, 9, day, 20, 0, 0, TimeSpan.Zero), Ended: true);

    private static ProgramScript Program() => new()
    {
        Id = "p",
        Name = "P",
        Purpose = "A test.",
        WhoFor = "Tests.",
        Joining = new ProgramJoining("Anybody.", MinorsRule.Yes, null),
        MakeUp = new ProgramMakeUp(7, 1),
        Levels = [new ProgramLevel("all", "a")],
        Weeks = [Week("s1"), Week("s2")],
    };

    private static PlannedWeek Week(string session) => new(session, [new PlannedSession(session, false, [new PlannedDrill("test", null, [])])]);
}
