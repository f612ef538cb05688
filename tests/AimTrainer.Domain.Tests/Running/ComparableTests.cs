namespace AimTrainer.Domain.Tests;

public class ComparableTests
{
    private const string Line =
        """{ "name": "line", "line": [{ "name": "near", "board": 10, "feet": 15, "widthBoards": 3 }, { "name": "far", "board": 8, "feet": 30, "widthBoards": 5 }] }""";

    private static readonly Baseline Usual = new()
    {
        Speed = new BallSpeed(MilesPerHour.FromMilesPerHour(17), SpeedPlace.Release),
        Revs = Rpm.FromRpm(300),
        LaunchAngle = Degrees.FromDegrees(2),
        Laydown = Board.FromBoards(15),
    };

    [Fact]
    public void NoLimits_AnyShot_IsComparable()
    {
        Assert.Equal(Comparability.Yes, Play.Begun(Play.OneTarget(""" "until": { "shots": 5 } """)).Throw(0.0).Comparability);
    }

    [Theory]
    [InlineData(18.0, true)]
    [InlineData(16.0, true)]
    [InlineData(18.01, false)]
    [InlineData(15.99, false)]
    public void Speed_AgainstBaseline_LimitIsIncluded(double mph, bool comparable)
    {
        Assert.Equal(comparable, Judge(""" "speedWithinMph": 1 """, reading => Speed(reading, mph, SpeedPlace.Release)).IsComparable);
    }

    [Fact]
    public void Speed_GivenByTheDrill_GoesBeforeTheBaseline()
    {
        var found = Judge(""" "speedWithinMph": 1, "expect": { "speedMph": 20, "speedAt": "pins" } """, reading => Speed(reading, 17, SpeedPlace.Pins));

        Assert.False(found.IsComparable);
        Assert.Equal("speed 17 mph, expected 20 within 1", Assert.Single(found.Reasons));
    }

    [Theory]
    [InlineData(SpeedPlace.Pins, "speed measured at the pins, expected is one measured at the release")]
    [InlineData(SpeedPlace.Average, "speed measured over the whole lane, expected is one measured at the release")]
    [InlineData(SpeedPlace.Unknown, "speed measured at a place nobody named, expected is one measured at the release")]
    public void Speed_MeasuredElsewhere_IsUnknownWithAReason(SpeedPlace place, string reason)
    {
        var found = Judge(""" "speedWithinMph": 1 """, reading => Speed(reading, 17, place));

        Assert.Null(found.IsComparable);
        Assert.Equal(reason, Assert.Single(found.Reasons));
    }

    [Fact]
    public void Speed_NobodyNamedEitherPlace_IsUnknown()
    {
        var baseline = new Baseline { Speed = new BallSpeed(MilesPerHour.FromMilesPerHour(17), SpeedPlace.Unknown) };

        Assert.Null(Judge(""" "speedWithinMph": 1 """, reading => Speed(reading, 17, SpeedPlace.Unknown), baseline).IsComparable);
    }

    [Fact]
    public void AllLimits_NothingMeasured_IsUnknownAndSaysEach()
    {
        var found = Judge(""" "speedWithinMph": 1, "revsWithinRpm": 30, "launchAngleWithinDegrees": 0.5, "laydownWithinBoards": 1 """, _ => { });

        Assert.Null(found.IsComparable);
        Assert.Equal(["speed not measured", "revs not measured", "launch angle not measured", "laydown not measured"], found.Reasons);
    }

    [Fact]
    public void NoBaseline_NothingGiven_IsUnknown()
    {
        var found = Judge(""" "revsWithinRpm": 30 """, reading => reading.RevsRpm = 300, new Baseline());

        Assert.Null(found.IsComparable);
        Assert.Equal("no usual revs to compare with", Assert.Single(found.Reasons));
    }

    [Fact]
    public void OneOutsideOneUnknown_IsNotComparable()
    {
        var found = Judge(""" "speedWithinMph": 1, "revsWithinRpm": 30 """, reading => reading.RevsRpm = 331);

        Assert.False(found.IsComparable);
        Assert.Equal(["revs 331 rpm, expected 300 within 30", "speed not measured"], found.Reasons);
    }

    [Theory]
    [InlineData(12.0, true)]
    [InlineData(13.0, true)]
    [InlineData(13.01, false)]
    public void Laydown_AtALine_IsHeldAgainstTheLineDrawnBackToTheFoulLine(double laydown, bool comparable)
    {
        // 10 at 15 ft to 8 at 30 ft: two boards in 15 ft, so the line starts at board 12.
        var found = Judge(""" "laydownWithinBoards": 1 """, reading => reading.LaydownBoard = laydown, aims: Line);

        Assert.Equal(comparable, found.IsComparable);
    }

    [Fact]
    public void LaunchAngle_AtALine_IsHeldAgainstTheLines()
    {
        // Two boards of 41.5/39 in over 15 ft: atan(2.128 / 180) = 0.677 degrees outward.
        Assert.True(Judge(""" "launchAngleWithinDegrees": 0.1 """, reading => reading.LaunchAngleDegrees = 0.777, aims: Line).IsComparable);
        Assert.False(Judge(""" "launchAngleWithinDegrees": 0.1 """, reading => reading.LaunchAngleDegrees = 0.778, aims: Line).IsComparable);
    }

    [Fact]
    public void LaunchAngle_NoneReported_TheComputedOneIsJudged()
    {
        // Laydown 12 to 10 at 15 ft, the line's own angle.
        Assert.True(Judge(""" "launchAngleWithinDegrees": 0.05 """, reading => reading.LaydownBoard = 12, aims: Line).IsComparable);
    }

    [Fact]
    public void GivenLaydown_AtALine_GoesBeforeTheLines()
    {
        Assert.True(Judge(""" "laydownWithinBoards": 1, "expect": { "laydownBoard": 20 } """, reading => reading.LaydownBoard = 20, aims: Line).IsComparable);
    }

    [Fact]
    public void Laydown_LineTooSteepToStartOnTheLane_IsHeldAgainstTheBaseline()
    {
        const string Steep =
            """{ "name": "line", "line": [{ "name": "near", "board": 1, "feet": 59, "widthBoards": 3 }, { "name": "far", "board": 39, "feet": 60, "widthBoards": 5 }] }""";

        Assert.True(Judge(""" "laydownWithinBoards": 1 """, reading => reading.LaydownBoard = 15, aims: Steep).IsComparable);
    }

    [Theory]
    [InlineData(true, 400.0, 4)]
    [InlineData(true, null, 2)]
    [InlineData(false, 400.0, 2)]
    public void Outside_IsGradedAndLeftOutOfSizingOnlyWhenTheDrillSaysSo(bool leaveOut, double? revs, double widthAfter)
    {
        var play = Play.Begun(
            Play.Drill(Play.Block(
                """{ "name": "spot", "board": 10, "feet": 15, "sizing": { "kind": "ladder", "widthsBoards": [4, 2], "hits": 1, "misses": 1, "ofLast": 1 } }""",
                $$""" "order": { "kind": "serial" }, "until": { "shots": 5 }, "comparable": { "revsWithinRpm": 30, "leaveOutOfSizing": {{(leaveOut ? "true" : "false")}} } """)),
            Play.Setup with { Baseline = Usual });

        play.Throw(SampleShot.Of([(15, 10)], reading => reading.RevsRpm = revs));

        Assert.Equal("centre", play.Graded.Single().Targets[0].Grade!.Name);
        Assert.Equal(widthAfter, play.Shown.Targets[0].Target.Width.Boards);
    }

    private static void Speed(ShotReading reading, double mph, SpeedPlace place) => (reading.SpeedMilesPerHour, reading.SpeedPlace) = (mph, place);

    private static Comparability Judge(
        string comparable, Action<ShotReading> more, Baseline? baseline = null, string aims = """{ "name": "spot", "board": 10, "feet": 15, "widthBoards": 3 }""")
    {
        var drill = Play.Drill(Play.Block(aims, $$""" "order": { "kind": "serial" }, "until": { "shots": 5 }, "comparable": { {{comparable}} } """));
        var play = Play.Begun(drill, Play.Setup with { Baseline = baseline ?? Usual });
        play.Throw(SampleShot.Of([(15, 10)], more));
        return play.Graded.Single().Comparability;
    }
}
