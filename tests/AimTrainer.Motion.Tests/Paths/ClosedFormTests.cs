using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

/// <summary>Even friction has closed forms. Source: physics reference, sections 4, 7, 8 and 10.</summary>
public sealed class ClosedFormTests
{
    private static readonly Ball _uniform = new() { MassKilograms = 7, RadiusMetres = 0.11, RadiusOfGyrationMetres = Math.Sqrt(0.4) * 0.11 };

    [Fact]
    public void Trace_NoSpinUniformSphere_HasTheTextbookNumbers()
    {
        // Source: standard textbook problem, v0 = 8.5 m/s, mu = 0.21, g = 9.80665: 1.179264 s, 8.591778 m, 6.071429 m/s.
        var path = Paths.Trace(LaneSurface.Even(0.21), _uniform, new Release(Hand.Right, 20, 0, 8.5, 0));

        Assert.Equal(1.179264, path.End.RollSeconds, 5e-7);
        Assert.Equal(8.591778, path.End.RollFeet * 0.3048, 5e-7);
        Assert.Equal(6.071429, path.End.EndMetresPerSecond, 5e-7);
        Assert.Equal(20, path.End.BoardAt60, 1e-12);
        Assert.Equal(20, path.End.ContactBoard, 1e-12);
    }

    [Fact]
    public void Trace_NoSpinUniformSphere_HasDaishsFormulas()
    {
        // Source: C. B. Daish, The Physics of Ball Games, ch. 14: T = 2 V / (7 mu g), S = 12 V^2 / (49 mu g).
        foreach (var (speed, friction) in ((double, double)[])[(6.3, 0.2), (8, 0.2), (9.4, 0.25)])
        {
            var path = Paths.Trace(LaneSurface.Even(friction), _uniform, new Release(Hand.Left, 20, 0, speed, 0));
            Assert.Equal(2 * speed / (7 * friction * 9.80665), path.End.RollSeconds, 1e-12);
            Assert.Equal(12 * speed * speed / (49 * friction * 9.80665), path.End.RollFeet * 0.3048, 1e-11);
            Assert.Equal(5 * speed / 7, path.End.EndMetresPerSecond, 1e-12);
        }
    }

    [Theory]
    [InlineData(0.10, 28, 5.0, 416, 45, 0)]
    [InlineData(0.15, 33, 4.0, 300, 60, 12)]
    [InlineData(0.30, 20, 3.0, 300, 80, 5)]
    public void Trace_HookOnEvenFriction_HasTheClosedForms(double friction, double laydown, double launch, double revs, double rotation, double tilt)
    {
        var ball = Ball.Usual;
        var release = new Release(Hand.Right, laydown, launch, 8, revs) { AxisRotationDegrees = rotation, AxisTiltDegrees = tilt };
        var path = Paths.Trace(LaneSurface.Even(friction), ball, release);

        var (beta, turn, angle) = (ball.Beta, rotation * Math.PI / 180, launch * Math.PI / 180);
        var rim = revs * Math.PI / 30 * ball.RadiusMetres * Math.Cos(tilt * Math.PI / 180);
        var (along, side) = (8 - (rim * Math.Cos(turn)), rim * Math.Sin(turn));
        var slip = Math.Sqrt((along * along) + (side * side));
        var push = friction * 9.80665;
        var time = slip * beta / ((1 + beta) * push);
        var down = (8 * time) - (push * along / slip * time * time / 2);
        var across = slip * side * beta * beta / (2 * (1 + beta) * (1 + beta) * push);
        Assert.Equal(time, path.End.RollSeconds, 1e-12);
        Assert.Equal(((down * Math.Cos(angle)) + (across * Math.Sin(angle))) / 0.3048, path.End.RollFeet, 1e-10);
        var inward = ((across * Math.Cos(angle)) - (down * Math.Sin(angle))) / (41.5 * 0.0254 / 39);
        Assert.Equal(laydown + inward, path.At(path.End.RollFeet).Board, 1e-9);

        // Breakpoint: t_b = v0 sin a / (mu g e_lat).
        var lateral = ((along * Math.Sin(angle)) + (side * Math.Cos(angle))) / slip;
        var turned = 8 * Math.Sin(angle) / (push * lateral);
        Assert.True(turned < time);
        Assert.Equal(turned, path.At(path.End.BreakpointFeet).Seconds, 1e-11);
        Assert.Equal(0, path.At(path.End.BreakpointFeet).AngleDegrees, 1e-9);
    }

    [Theory]
    [InlineData(2.46, 300, 45, 5.19)]
    [InlineData(2.50, 416, 45, 7.13)]
    [InlineData(2.60, 416, 60, 9.69)]
    [InlineData(2.70, 500, 50, 10.41)]
    public void Trace_RolledOut_TurnsByTheTableOfTurns(double gyration, double revs, double rotation, double turn)
    {
        // Source: physics reference, section 4, turn at 8.0 m/s, no tilt, radius 4.275 in.
        var ball = Ball.Usual with { RadiusMetres = 4.275 * 0.0254, RadiusOfGyrationMetres = gyration * 0.0254 };
        var release = new Release(Hand.Right, 20, 4, 8, revs) { AxisRotationDegrees = rotation };
        var end = Paths.Trace(LaneSurface.Even(0.2), ball, release).End;
        Assert.False(double.IsNaN(end.RollFeet));
        var heading = Paths.Trace(LaneSurface.Even(0.2), ball, release).At(Math.Min(end.EndFeet, 59)).AngleDegrees;
        Assert.Equal(turn, heading + 4, 0.005);
    }

    [Fact]
    public void Trace_NoSpinSmallGyration_HasTheTablesNumbers()
    {
        // Source: physics reference, section 10, case 03: radius of gyration 2.50 in, mu 0.15 (from its own roll time).
        var ball = Ball.Usual with { RadiusMetres = 0.108585, RadiusOfGyrationMetres = 0.0635 };
        var path = Paths.Trace(LaneSurface.Even(0.15), ball, new Release(Hand.Right, 20, 0, 8, 0));
        Assert.Equal(1.385919, path.End.RollSeconds, 5e-7);
        Assert.Equal(9.674630, path.End.RollFeet * 0.3048, 5e-7);
        Assert.Equal(2.830797, path.End.EndSeconds, 5e-7);
        Assert.Equal(4.560, path.SpeedLossMph, 5e-4);
    }

    [Fact]
    public void Trace_HouseLane_HasThePublishedSensitivities()
    {
        // Source: physics reference, section 8, case 12, central differences a unit: speed -2.9 a mph, launch -7.5 a degree,
        // laydown +0.38 a board, revs +3.4 for 50 rpm, rotation +3.0 for 10 degrees, tilt -0.4 for 5 degrees.
        var one = PathCases.Case("12_house_RH");
        var (lane, ball, release) = (PathCases.Lane("house40"), PathCases.BallOf(one), PathCases.ReleaseOf(one));
        double Moves(Func<Release, double, Release> change, double by) =>
            (Paths.Trace(lane, ball, change(release, by)).End.BoardAt60 - Paths.Trace(lane, ball, change(release, -by)).End.BoardAt60) / (2 * by);

        Assert.Equal(-2.9, Moves((r, d) => r with { SpeedMetresPerSecond = r.SpeedMetresPerSecond + (d * 0.44704) }, 0.05), 0.06);
        Assert.Equal(-7.5, Moves((r, d) => r with { LaunchAngleDegrees = r.LaunchAngleDegrees + d }, 0.02), 0.1);
        Assert.Equal(0.38, Moves((r, d) => r with { LaydownBoard = r.LaydownBoard + d }, 0.05), 0.01);
        Assert.Equal(3.4, 50 * Moves((r, d) => r with { RevsRpm = r.RevsRpm + d }, 5), 0.06);
        Assert.Equal(3.0, 10 * Moves((r, d) => r with { AxisRotationDegrees = r.AxisRotationDegrees + d }, 0.5), 0.06);
        Assert.Equal(-0.4, 5 * Moves((r, d) => r with { AxisTiltDegrees = r.AxisTiltDegrees + d }, 0.5), 0.06);
    }
}
