using CsCheck;

namespace AimTrainer.Domain.Tests;

public sealed class ShotReadingTests
{
    /// <summary>Every number of a shot: its name in a file, its limits, its smallest step, how it is set and how it is read back.</summary>
    private static readonly Dictionary<string, (double Low, double High, double Step, Action<ShotReading, double> Set, Func<Shot, double?> Read)> Fields = new()
    {
        ["laydownBoard"] = (-4, 44, 0.01, (reading, value) => reading.LaydownBoard = value, shot => shot.Laydown?.Boards),
        ["breakpointBoard"] = (-4, 44, 0.01, (reading, value) => reading.BreakpointBoard = value, shot => shot.Breakpoint?.Board.Boards),
        ["breakpointFeet"] = (0, 60, 0.001, SetBreakpointFeet, shot => shot.Breakpoint?.Distance?.Value),
        ["entryBoard"] = (-4, 44, 0.01, (reading, value) => reading.EntryBoard = value, shot => shot.Entry?.Boards),
        ["entryAngleDeg"] = (-20, 20, 0.001, (reading, value) => reading.EntryAngleDegrees = value, shot => shot.EntryAngle?.Value),
        ["launchAngleDeg"] = (-20, 20, 0.001, (reading, value) => reading.LaunchAngleDegrees = value, shot => shot.LaunchAngle?.Value),
        ["speedMph"] = (1, 40, 0.01, (reading, value) => reading.SpeedMilesPerHour = value, shot => shot.Speed?.Value.Value),
        ["revsRpm"] = (0, 1000, 0.1, (reading, value) => reading.RevsRpm = value, shot => shot.Revs?.Value),
        ["axisRotationDeg"] = (-180, 180, 0.001, (reading, value) => reading.AxisRotationDegrees = value, shot => shot.AxisRotation?.Value),
        ["axisTiltDeg"] = (-90, 90, 0.001, (reading, value) => reading.AxisTiltDegrees = value, shot => shot.AxisTilt?.Value),
        ["boardAt15"] = (-4, 44, 0.01, (reading, value) => reading.AddCrossing(15, value), shot => shot.Crossings[0].Board.Boards),
        ["boardAtFeet"] = (0, 60, 0.001, (reading, value) => reading.AddCrossing(value, 10), shot => shot.Crossings[0].Distance.Value),
    };

    public static TheoryData<string> FieldNames => new(Fields.Keys);

    [Theory]
    [MemberData(nameof(FieldNames))]
    public void Check_AtAndJustInsideTheLimits_IsKept(string name)
    {
        var (low, high, step, _, read) = Fields[name];
        foreach (var value in (double[])[low, low + step, high - step, high])
        {
            var shot = Read(name, value, out var problems);
            Assert.Empty(problems);
            Assert.Equal(value, read(shot!)!.Value, 9);
        }
    }

    [Theory]
    [MemberData(nameof(FieldNames))]
    public void Check_OutsideTheLimits_SaysWhatIsAllowed(string name)
    {
        var (low, high, step, _, _) = Fields[name];
        double[] outside =
        [
            low - step, high + step, Math.BitDecrement(low), Math.BitIncrement(high),
            double.NaN, double.PositiveInfinity, double.NegativeInfinity, double.MaxValue,
        ];
        foreach (var value in outside)
        {
            Assert.Null(Read(name, value, out var problems));
            var problem = Assert.Single(problems);
            Assert.Equal(FormattableString.Invariant($"{value}"), problem.Found);
            Assert.Equal(FormattableString.Invariant($"{low} to {high}"), problem.Allowed);
            Assert.Equal(name == "boardAtFeet" ? FormattableString.Invariant($"boardAt{value} (feet)") : name, problem.Field);
        }
    }

    [Theory]
    [MemberData(nameof(FieldNames))]
    public void Check_AnyValue_IsRoundedOnceToItsStep(string name)
    {
        var (low, high, step, _, read) = Fields[name];
        var decimals = (int)Math.Round(-Math.Log10(step));
        // One decimal more than is kept, so that one value in ten is a tie.
        var scale = (int)Math.Round(10 / step);
        Gen.Int[(int)(low * scale), (int)(high * scale)].Sample(count =>
        {
            var written = (decimal)count / scale;
            var kept = read(Read(name, (double)written, out _)!);
            return kept == (double)Math.Round(written, decimals, MidpointRounding.ToEven);
        }, iter: 2_000);
    }

    [Theory]
    [InlineData(10.125, 10.12)]
    [InlineData(10.135, 10.14)]
    public void Check_BoardOnATie_GoesToEven(double written, double kept)
    {
        var shot = SampleShot.Of([(15, written)], reading => reading.LaydownBoard = written);
        Assert.Equal(kept, shot.Laydown!.Value.Boards);
        Assert.Equal(kept, shot.Crossings[0].Board.Boards);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    public void Check_PinsAtTheLimits_AreKept(int pins) => Assert.Equal(pins, SampleShot.Of([], reading => reading.Pins = pins).Pins);

    [Theory]
    [InlineData(-1)]
    [InlineData(11)]
    public void Check_PinsOutsideTheLimits_AreNot(int pins)
    {
        Assert.Null(new ShotReading { Pins = pins }.Check(out var problems));
        Assert.Equal(new ReadingProblem("pins", FormattableString.Invariant($"{pins}"), "0 to 10"), Assert.Single(problems));
    }

    [Fact]
    public void Check_NothingKnown_IsAShotThatKnowsNothing()
    {
        var shot = SampleShot.Of([]);
        Assert.Empty(shot.Crossings);
        Assert.Null(shot.Laydown);
        Assert.Null(shot.Breakpoint);
        Assert.Null(shot.Entry);
        Assert.Null(shot.EntryAngle);
        Assert.Null(shot.LaunchAngle);
        Assert.Null(shot.Speed);
        Assert.Null(shot.Revs);
        Assert.Null(shot.AxisRotation);
        Assert.Null(shot.AxisTilt);
        Assert.Null(shot.Pins);
        Assert.Null(shot.Id);
        Assert.Null(shot.Time);
        Assert.Null(shot.Ball);
        Assert.Null(shot.Note);
    }

    [Fact]
    public void Check_SeveralWrong_SaysAllOfThem()
    {
        var reading = new ShotReading { LaydownBoard = 99, SpeedMilesPerHour = double.NaN, Pins = 11, BreakpointFeet = 70 };
        reading.AddCrossing(61, 99);
        Assert.Null(reading.Check(out var problems));
        Assert.Equal(
            ["boardAt61", "boardAt61 (feet)", "breakpointFeet", "breakpointFeet", "laydownBoard", "pins", "speedMph"],
            problems.Select(problem => problem.Field).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Check_BreakpointDistanceAlone_SaysWhatIsMissing()
    {
        Assert.Null(new ShotReading { BreakpointFeet = 42 }.Check(out var problems));
        Assert.Equal("breakpointFeet: found a distance without a board; allowed: breakpointBoard beside it", Assert.Single(problems).ToString());
    }

    [Fact]
    public void Check_BreakpointBoardAlone_IsKeptWithoutADistance() =>
        Assert.Equal(new Breakpoint(Board.FromBoards(7), null), SampleShot.Of([], reading => reading.BreakpointBoard = 7).Breakpoint);

    [Fact]
    public void Check_Speed_KeepsWhereItWasMeasured()
    {
        var shot = SampleShot.Of([], reading => (reading.SpeedMilesPerHour, reading.SpeedPlace) = (17.125, SpeedPlace.Pins));
        Assert.Equal(new BallSpeed(MilesPerHour.FromMilesPerHour(17.12), SpeedPlace.Pins), shot.Speed);
        Assert.Equal(SpeedPlace.Unknown, SampleShot.Of([], reading => reading.SpeedMilesPerHour = 17).Speed!.Value.Place);
    }

    [Fact]
    public void Check_Words_AreTrimmedAndMeasured()
    {
        var shot = SampleShot.Of([], reading => (reading.Id, reading.Ball, reading.Note) = (" s1 ", "  ", new string('n', 2000)));
        Assert.Equal("s1", shot.Id);
        Assert.Null(shot.Ball);
        Assert.Equal(2000, shot.Note!.Length);

        Assert.Null(new ShotReading { Id = new string('i', 201), Ball = new string('b', 201), Note = new string('n', 2001) }.Check(out var problems));
        Assert.Equal(["id", "ball", "note"], problems.Select(problem => problem.Field));
    }

    [Fact]
    public void Check_Crossings_AreSortedByDistance()
    {
        var shot = SampleShot.Of([(42.5, 7), (15, 10.5), (0.5, 14), (37, 8)]);
        Assert.Equal([0.5, 15, 37, 42.5], shot.Crossings.Select(crossing => crossing.Distance.Value));
        Assert.Equal([14, 10.5, 8, 7], shot.Crossings.Select(crossing => crossing.Board.Boards));
    }

    [Fact]
    public void Check_SameCrossingTwice_IsTakenOnce() =>
        Assert.Equal(2, SampleShot.Of([(15, 10.5), (42.5, 7), (15, 10.501), (15.0001, 10.5)]).Crossings.Count);

    [Fact]
    public void Check_TwoBoardsAtOneDistance_IsAConflict()
    {
        var reading = new ShotReading();
        reading.AddCrossing(15, 10.5);
        reading.AddCrossing(42.5, 7);
        reading.AddCrossing(15, 10.51);
        Assert.Null(reading.Check(out var problems));
        var problem = Assert.Single(problems);
        Assert.Equal("boardAt15", problem.Field);
        Assert.Contains("10.5", problem.Found, StringComparison.Ordinal);
        Assert.Contains("10.51", problem.Found, StringComparison.Ordinal);
        Assert.Equal("one board a distance", problem.Allowed);
    }

    private static Shot? Read(string name, double value, out ValueList<ReadingProblem> problems)
    {
        var reading = new ShotReading();
        Fields[name].Set(reading, value);
        return reading.Check(out problems);
    }

    private static void SetBreakpointFeet(ShotReading reading, double value) =>
        (reading.BreakpointBoard, reading.BreakpointFeet) = (7, value);
}
