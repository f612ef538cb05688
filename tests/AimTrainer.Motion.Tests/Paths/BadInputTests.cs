using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

/// <summary>Strange input: a path or a clear refusal.</summary>
public sealed class BadInputTests
{
    private static readonly Release _usual = new(Hand.Right, 22, 2.6, 8, 350) { AxisTiltDegrees = 12 };

    public static TheoryData<string, Release, string> Refused() => new()
    {
        { "laydown not a number", _usual with { LaydownBoard = double.NaN }, "the laydown board is NaN; allowed: 0.5 to 39.5" },
        { "laydown beyond the lane", _usual with { LaydownBoard = 40 }, "the laydown board is 40; allowed: 0.5 to 39.5" },
        { "laydown before the foul line", _usual with { LaydownFeet = -1 }, "the laydown, feet past the foul line, is -1; allowed: 0 to 10" },
        { "laydown at the pins", _usual with { LaydownFeet = 61 }, "the laydown, feet past the foul line, is 61; allowed: 0 to 10" },
        { "speed not a number", _usual with { SpeedMetresPerSecond = double.NaN }, "the speed in m/s is NaN; allowed: 2 to 16" },
        { "no speed", _usual with { SpeedMetresPerSecond = 0 }, "the speed in m/s is 0; allowed: 2 to 16" },
        { "endless speed", _usual with { SpeedMetresPerSecond = double.PositiveInfinity }, "the speed in m/s is Infinity; allowed: 2 to 16" },
        { "revs below none", _usual with { RevsRpm = -1 }, "the revs in rpm is -1; allowed: 0 to 1000" },
        { "across the lane", _usual with { LaunchAngleDegrees = 45 }, "the launch angle in degrees is 45; allowed: -10 to 10" },
        { "rotation beyond side roll", _usual with { AxisRotationDegrees = 91 }, "the axis rotation in degrees is 91; allowed: -90 to 90" },
        { "tilt not a number", _usual with { AxisTiltDegrees = double.NaN }, "the axis tilt in degrees is NaN; allowed: 0 to 90" },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void Trace_ImpossibleRelease_IsRefusedInWords(string what, Release release, string message)
    {
        Assert.NotEmpty(what);
        Assert.Equal(message, release.Problem());
        var refusal = Assert.Throws<ArgumentException>(() => Paths.Trace(InventedLane.House(), Ball.Usual, release));
        Assert.StartsWith($"release 1: {message}", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_OneImpossibleReleaseAmongMany_IsNamedByItsNumber()
    {
        Release[] releases = [.. Enumerable.Repeat(_usual, 700)];
        releases[600] = _usual with { RevsRpm = double.NaN };
        var ends = new PathEnd[700];

        Assert.StartsWith("release 601: ", Assert.Throws<ArgumentException>(() => Paths.Run(InventedLane.House(), Ball.Usual, releases, ends)).Message, StringComparison.Ordinal);
        Assert.StartsWith("release 601: ", Assert.Throws<ArgumentException>(() => Paths.RunOnCores(
            InventedLane.House(), Ball.Usual, releases, ends, 2, TestContext.Current.CancellationToken)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Paths.Run(InventedLane.House(), Ball.Usual, releases, ends.AsSpan(1)));
    }

    [Fact]
    public void Trace_NoRevs_RunsStraightAndLosesMostSpeed()
    {
        var path = Paths.Trace(InventedLane.House(), Ball.Usual, new Release(Hand.Right, 20, 0, 8, 0));
        Assert.Equal(20, path.End.BoardAt60, 1e-12);
        Assert.True(double.IsNaN(path.End.BreakpointBoard));

        // Source: physics reference, section 7: an unrevved ball that rolls loses 3.8 to 4.6 mph.
        Assert.InRange(path.SpeedLossMph, 3.8, 4.6);
    }

    [Fact]
    public void Trace_OverSpun_GainsSpeedAndLosesEnergy()
    {
        // Rolling at 4 m/s needs 352 rpm; this turns at 650. Source: physics reference, section 3, point 5.
        var path = Paths.Trace(LaneSurface.Even(0.2), Ball.Usual, new Release(Hand.Right, 20, 0, 4, 650) { AxisRotationDegrees = 0 });
        Assert.True(path.SpeedLossMph < 0);
        Assert.True(path.EnergyAtEndJoules < path.EnergyAtLaydownJoules);
        Assert.Equal(20, path.End.BoardAt60, 1e-12);
    }

    [Fact]
    public void Trace_PureSideRoll_IsAPath()
    {
        var end = Paths.Trace(InventedLane.House(), Ball.Usual, new Release(Hand.Right, 15, 3, 7.5, 300) { AxisRotationDegrees = 90 }).End;
        Assert.True(double.IsFinite(end.EndSeconds));
        Assert.True(double.IsFinite(end.BreakpointBoard));
    }

    [Fact]
    public void Trace_RollingFromTheStart_RollsStraightFromTheLaydown()
    {
        var release = new Release(Hand.Right, 20, 1, 8, 8 / Ball.Usual.RadiusMetres * 30 / Math.PI) { AxisRotationDegrees = 0, LaydownFeet = 1 };
        var end = Paths.Trace(InventedLane.House(), Ball.Usual, release).End;
        Assert.InRange(end.RollFeet, 1, 1.1);
        Assert.Equal(-1, end.AngleAt60Degrees, 1e-6);
        Assert.Equal(8, end.EndMetresPerSecond, 1e-9);
    }

    [Theory]
    [InlineData(Hand.Right)]
    [InlineData(Hand.Left)]
    public void Trace_NoFrictionAnywhere_SlidesStraightToThePins(Hand hand)
    {
        var end = Paths.Trace(LaneSurface.Even(0), Ball.Usual, _usual with { Hand = hand, LaunchAngleDegrees = 1 }).End;
        Assert.Equal(PathFinish.Pins, end.Finish);
        Assert.Equal(22 - (Math.Tan(1 * Math.PI / 180) * 60 * 12 * 39 / 41.5), end.BoardAt60, 1e-10);
        Assert.Equal(18.288 / (8 * Math.Cos(1 * Math.PI / 180)), end.EndSeconds, 1e-12);
        Assert.True(double.IsNaN(end.RollFeet));
    }

    [Fact]
    public void Trace_NoFrictionInTheOilOfAHousePattern_IsAPath()
    {
        var end = Paths.Trace(InventedLane.House().With(oilFriction: 0), Ball.Usual, _usual).End;
        Assert.True(double.IsFinite(end.EndSeconds));
    }

    [Fact]
    public void Trace_OutwardPastTheEdge_EndsInTheGutterAtTheEdge()
    {
        // Source: physics reference, section 10, case 20: the path ends on board 0.5.
        var path = Paths.Trace(InventedLane.House(), Ball.Usual, new Release(Hand.Right, 4, 4, 8, 300));
        Assert.Equal(PathFinish.Gutter, path.End.Finish);
        Assert.InRange(path.End.EndFeet, 4, 6);
        Assert.Equal(0.5, path.At(path.End.EndFeet).Board, 1e-9);
        Assert.True(double.IsNaN(path.End.BoardAt60) && double.IsNaN(path.End.ContactBoard) && double.IsNaN(path.End.AngleAt60Degrees));
        Assert.True(path.At(path.End.EndFeet - 0.01).Board > 0.5);
    }

    [Fact]
    public void Trace_JustOverTheEdgeAndBack_IsInTheGutterAllTheSame()
    {
        // Laydown so that the breakpoint lies a hair outside of the edge, where no end of a step may see it.
        var (low, high) = (1.0, 20.0);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Paths.Trace(InventedLane.House(), Ball.Usual, At(middle)).End.Finish == PathFinish.Gutter ? (middle, high) : (low, middle);
        }

        Assert.Equal(0.5, Paths.Trace(InventedLane.House(), Ball.Usual, At(high)).End.BreakpointBoard, 1e-6);
        static Release At(double board) => new(Hand.Right, board, 2.5, 8, 350);
    }

    [Fact]
    public void At_OutsideThePath_IsRefused()
    {
        var path = Paths.Trace(InventedLane.House(), Ball.Usual, _usual with { LaydownFeet = 1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => path.At(0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => path.At(60.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => path.At(double.NaN));
        Assert.Null(path.BoardAt(default));
        Assert.Equal(path.End.BoardAt60, path.BoardAt(Feet.FromFeet(60))!.Value.Boards, 1e-4);
    }

    [Theory]
    [InlineData(double.NaN, 0.11, 2.5, 1)]
    [InlineData(7, 0.2, 2.5, 1)]
    [InlineData(7, 0.11, 4, 1)]
    [InlineData(7, 0.11, 2.5, 0)]
    public void Run_ImpossibleBall_IsRefused(double mass, double radius, double gyrationInches, double grip) => Assert.Contains(
        "allowed:",
        Assert.Throws<ArgumentException>(() => Paths.Trace(
            InventedLane.House(), new Ball { MassKilograms = mass, RadiusMetres = radius, RadiusOfGyrationMetres = gyrationInches * 0.0254, Grip = grip }, _usual)).Message,
        StringComparison.Ordinal);

    [Fact]
    public void Trace_StrongerGrip_IsAsHigherFriction()
    {
        var strong = Paths.Trace(LaneSurface.Even(0.1), Ball.Usual with { Grip = 1.5 }, _usual).End;
        Assert.Equal(Paths.Trace(LaneSurface.Even(0.15), Ball.Usual, _usual).End.RollSeconds, strong.RollSeconds, 1e-12);
    }
}
