using AimTrainer.Domain;

namespace AimTrainer.Feeds.Tests;

public class TypedShotsTests
{
    private static readonly Aim Arrows = TestLane.Single(10, 15);
    private static readonly Aim Downlane = TestLane.Single(7, 40);
    private static readonly Aim Line = TestLane.Line(12, 15, 7, 42);

    [Fact]
    public void Parse_OneBoard_IsAtTheShownTargetOrElseAtTheArrows()
    {
        Assert.Equal([(15.0, 10.5)], Places("10.5", null));
        Assert.Equal([(15.0, 10.5)], Places("10.5", Arrows));
        Assert.Equal([(40.0, 10.5)], Places("10.5", Downlane));
        Assert.Equal([(15.0, 10.5)], Places("10.5", Line));
    }

    [Fact]
    public void Parse_TwoBoards_AreAtTheTargetsOrAtArrowsAndDownlane()
    {
        Assert.Equal([(15.0, 10.5), (42.0, 7.0)], Places("10.5/7", Line));
        Assert.Equal([(15.0, 10.5), (40.0, 7.0)], Places("10.5/7", Downlane));
        Assert.Equal([(15.0, 10.5), (35.5, 7.0)], Places("10.5/7", Arrows));
        Assert.Equal([(15.0, 10.5), (35.5, 7.0)], Places("10.5/7", null));
    }

    [Fact]
    public void Parse_QuestionMark_IsNotMeasured()
    {
        Assert.Equal([(42.0, 7.0)], Places("?/7", Line));
        Assert.Equal([(15.0, 10.0)], Places("10/?", Line));
        Assert.Empty(Places("?", Line));
    }

    [Theory]
    [InlineData("10,5", 10.5)]
    [InlineData("10,25", 10.25)]
    [InlineData("-2", -2)]
    [InlineData(" 10 ", 10)]
    public void Parse_WaysToWriteANumber_AreThatNumber(string text, double expected) => Assert.Equal([(15.0, expected)], Places(text, null));

    [Fact]
    public void Parse_SpeedAndNote_AreKept()
    {
        var shot = Thrown("10.5 / 7 @17,2 # late, @ the line", Line);
        Assert.Equal(new BallSpeed(MilesPerHour.FromMilesPerHour(17.2), SpeedPlace.Unknown), shot.Speed);
        Assert.Equal("late, @ the line", shot.Note);
        Assert.Equal(ShotSource.Typed, shot.Source);
        Assert.Null(shot.Time);
        Assert.Null(shot.Id);
    }

    [Theory]
    [InlineData("10,500", "\"10,500\"", "a board such as 10.5, boards such as 10.5/7, or ? for one that nobody saw")]
    [InlineData("1,0.5", "\"1,0.5\"", "a board such as 10.5, boards such as 10.5/7, or ? for one that nobody saw")]
    [InlineData("10 7", "\"10 7\"", "a board such as 10.5, boards such as 10.5/7, or ? for one that nobody saw")]
    [InlineData("10/", "\"\"", "a board such as 10.5, boards such as 10.5/7, or ? for one that nobody saw")]
    [InlineData("/7", "\"\"", "a board such as 10.5, boards such as 10.5/7, or ? for one that nobody saw")]
    [InlineData("@17", "\"\"", "a board such as 10.5, boards such as 10.5/7, or ? for one that nobody saw")]
    [InlineData("10@fast", "\"fast\" after @", "a speed in mph such as @17.2")]
    [InlineData("10@", "\"\" after @", "a speed in mph such as @17.2")]
    [InlineData("10/8/7", "3 boards", "at most 2: at 15 ft, 42 ft")]
    [InlineData("45", "boardAt15 45", "-4 to 44")]
    [InlineData("10@99", "speedMph 99", "1 to 40")]
    public void Parse_AnythingElse_SaysWhatMayBeTyped(string text, string found, string allowed) =>
        Assert.Equal(new TypedLine.Wrong(found, allowed), TypedShots.Parse(text, Line, TestLane.Lane));

    [Fact]
    public void Parse_TwoBoardsOnALaneWithoutDownlaneMarks_SaysSo() =>
        Assert.Equal(
            new TypedLine.Wrong("two boards, and this lane has no downlane mark for the second", "one board"),
            TypedShots.Parse("10/7", null, TestLane.Lane with { Markers = [] }));

    [Fact]
    public void Parse_LetterOrColon_IsForSomebodyElse()
    {
        Assert.Equal(new TypedLine.Command("pause"), TypedShots.Parse(" pause ", null, TestLane.Lane));
        Assert.Equal(new TypedLine.Command(":10"), TypedShots.Parse(":10", null, TestLane.Lane));
        Assert.Equal(new TypedLine.Empty(), TypedShots.Parse("  ", null, TestLane.Lane));
    }

    private static Shot Thrown(string text, Aim? shown) => Assert.IsType<TypedLine.Throw>(TypedShots.Parse(text, shown, TestLane.Lane)).Shot;

    private static List<(double Feet, double Board)> Places(string text, Aim? shown) =>
        [.. Thrown(text, shown).Crossings.AsEnumerable().Select(crossing => (crossing.Distance.Value, crossing.Board.Boards))];
}
