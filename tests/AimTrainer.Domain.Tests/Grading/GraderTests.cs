namespace AimTrainer.Domain.Tests;

public sealed class GraderTests
{
    private static readonly NamedTarget Arrows = new("arrows", new Target(Board.FromBoards(10), BoardOffset.FromBoards(3), Feet.FromFeet(15)));

    private static readonly NamedTarget Downlane = new("downlane", new Target(Board.FromBoards(7), BoardOffset.FromBoards(3), Feet.FromFeet(42)));

    private static readonly Aim Line = new("line", [Arrows, Downlane]);

    [Theory]
    [InlineData(11.5, 1.5, "hit")]
    [InlineData(8.5, -1.5, "hit")]
    [InlineData(11.51, 1.51, "close")]
    [InlineData(11.505, 1.5, "hit")]
    [InlineData(10, 0, "centre")]
    [InlineData(-3, -13, "miss")]
    public void Grade_Measured_IsTheMissFromTheCentreShown(double crossing, double miss, string grade)
    {
        var result = Grader.Grade(SampleShot.Of([(15, crossing)]), Arrows, GradeBands.Default);
        Assert.Equal(Arrows.Name, result.Name);
        Assert.Equal(Arrows.Target, result.Target);
        Assert.Equal(BoardOffset.FromBoards(miss), result.Miss);
        Assert.Equal(grade, result.Grade!.Name);
    }

    [Fact]
    public void Grade_NotMeasured_IsNoGrade()
    {
        var result = Grader.Grade(SampleShot.Of([(42, 7)]), Arrows, GradeBands.Default);
        Assert.Equal(TargetCrossing.Unknown, result.Crossing);
        Assert.Null(result.Miss);
        Assert.Null(result.Grade);
    }

    [Fact]
    public void Grade_Interpolated_IsGradedAndMarked()
    {
        var result = Grader.Grade(SampleShot.Of([(12, 11), (18, 10)]), Arrows, GradeBands.Default);
        Assert.Equal(new TargetCrossing(CrossingKind.Interpolated, Board.FromBoards(10.5)), result.Crossing);
        Assert.Equal("centre", result.Grade!.Name);
    }

    [Fact]
    public void Grade_Line_IsEveryTargetInItsOrder()
    {
        var results = Grader.Grade(SampleShot.Of([(15, 10), (42, 9)]), Line, GradeBands.Default);
        Assert.Equal(["arrows", "downlane"], results.Select(result => result.Name));
        Assert.Equal(["centre", "close"], results.Select(result => result.Grade!.Name));
        Assert.Equal(4, Grader.Points(results));
    }

    [Fact]
    public void Grade_SingleTarget_IsOneResult() =>
        Assert.Equal("arrows", Assert.Single(Grader.Grade(SampleShot.Of([(15, 10)]), new Aim("arrows", [Arrows]), GradeBands.Default)).Name);

    [Theory]
    [InlineData(10.0, 7.0, true)]
    [InlineData(10.0, 12.0, false)]
    [InlineData(15.0, 7.0, false)]
    [InlineData(10.0, null, null)]
    [InlineData(null, 7.0, null)]
    [InlineData(15.0, null, false)]
    [InlineData(null, 12.0, false)]
    [InlineData(null, null, null)]
    public void Held_Line_HoldsOnlyWithEveryTarget(double? arrows, double? downlane, bool? held)
    {
        var results = Grader.Grade(Seen(arrows, downlane), Line, GradeBands.Default);
        Assert.Equal(held, Grader.Held(results));
    }

    [Theory]
    [InlineData(10.0, 7.0, 6)]
    [InlineData(10.0, null, 3)]
    [InlineData(null, null, 0)]
    [InlineData(20.0, 8.5, 2)]
    public void Points_Line_CountsWhatWasGraded(double? arrows, double? downlane, int points) =>
        Assert.Equal(points, Grader.Points(Grader.Grade(Seen(arrows, downlane), Line, GradeBands.Default)));

    [Fact]
    public void Grade_OwnBands_AreUsed()
    {
        var bands = new GradeBands([new GradeBand(new Grade("on", 10, true), 0, BoardOffset.FromBoards(0.1))]);
        Assert.Equal("on", Grader.Grade(SampleShot.Of([(15, 10.1)]), Arrows, bands).Grade!.Name);
        Assert.Equal(GradeBands.Miss, Grader.Grade(SampleShot.Of([(15, 10.11)]), Arrows, bands).Grade);
    }

    private static Shot Seen(double? arrows, double? downlane)
    {
        var crossings = new List<(double, double)>();
        if (arrows is { } near)
        {
            crossings.Add((15, near));
        }

        if (downlane is { } far)
        {
            crossings.Add((42, far));
        }

        return SampleShot.Of([.. crossings]);
    }
}
