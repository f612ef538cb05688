using AimTrainer.Domain;
using CsCheck;

namespace AimTrainer.Motion.Tests;

/// <summary>What holds for any friction anywhere. Source: physics reference, section 3, points 1 to 5.</summary>
public sealed class ExactFactsTests
{
    private const int Throws = 10_000;

    [Fact]
    public void Trace_AnyThrow_PushesAlongOneDirectionAndKeepsWhatIsConserved() => Each((thrown, path) =>
    {
        var start = LabFrame.Of(thrown.Release, thrown.Ball);
        foreach (var point in path.Points(7))
        {
            var here = start.At(point, thrown.Release.Hand);

            // Velocity changes only along the first direction of slip: what is across it stays.
            var across = ((here.Vx - start.Vx) * start.SlipY) - ((here.Vy - start.Vy) * start.SlipX);
            Assert.Equal(0, across / start.Slip, 1e-10);
            Assert.Equal(start.Conserved.X, here.Conserved.X, 1e-11);
            Assert.Equal(start.Conserved.Y, here.Conserved.Y, 1e-11);
        }
    });

    [Fact]
    public void Trace_AnyThrow_NeverGainsEnergy() => Each((thrown, path) =>
    {
        var start = LabFrame.Of(thrown.Release, thrown.Ball);
        Assert.Equal(start.Energy, path.EnergyAtLaydownJoules, 1e-9);
        var last = start.Energy;
        foreach (var point in path.Points(3))
        {
            var energy = start.At(point, thrown.Release.Hand).Energy;
            Assert.True(energy <= last + 1e-9, $"{energy - last:e1} J gained before {point.Feet} ft");
            Assert.Equal(energy, path.EnergyAtJoules(point.Feet), 1e-8);
            last = energy;
        }

        if (!double.IsNaN(path.End.RollFeet))
        {
            var share = thrown.Ball.Beta / (1 + thrown.Ball.Beta);
            Assert.Equal(thrown.Ball.MassKilograms * start.Slip * start.Slip * share / 2, start.Energy - path.EnergyAtEndJoules, 1e-8);
        }
    });

    [Fact]
    public void Trace_RolledOut_HasTheVelocityThatNoFrictionChanges()
    {
        var rolled = 0;
        Each((thrown, path) =>
        {
            if (double.IsNaN(path.End.RollFeet))
            {
                return;
            }

            // v_f = (v0 + beta u cos rho, beta u sin rho) / (1 + beta), along the launch and inward of it.
            var (beta, release) = (thrown.Ball.Beta, thrown.Release);
            var rim = release.RevsRpm * Math.PI / 30 * thrown.Ball.RadiusMetres * Math.Cos(release.AxisTiltDegrees * Math.PI / 180);
            var (turn, launch) = (release.AxisRotationDegrees * Math.PI / 180, release.LaunchAngleDegrees * Math.PI / 180);
            var (along, inward) = ((release.SpeedMetresPerSecond + (beta * rim * Math.Cos(turn))) / (1 + beta), beta * rim * Math.Sin(turn) / (1 + beta));
            Assert.Equal(Math.Sqrt((along * along) + (inward * inward)), path.End.EndMetresPerSecond, 1e-10);
            if (path.End.Finish == PathFinish.Pins)
            {
                Assert.Equal((Math.Atan2(inward, along) - launch) * 180 / Math.PI, path.End.AngleAt60Degrees, 1e-9);
            }

            Interlocked.Increment(ref rolled);
        });
        Assert.InRange(rolled, Throws / 10, Throws);
    }

    [Fact]
    public void Run_OtherHandOnTheMirroredLane_IsTheSameBitForBit() => Each((thrown, path) =>
    {
        var other = thrown.Release with { Hand = thrown.Release.Hand == Hand.Right ? Hand.Left : Hand.Right };
        Assert.Equal(Bits.Of(path.End), Bits.Of(Paths.Trace(thrown.Mirrored, thrown.Ball, other).End));
    });

    private static void Each(Action<RandomThrow, BallPath> check) => Gen.ULong.Sample(
        seed =>
        {
            var thrown = RandomThrow.From(seed);
            check(thrown, thrown.Trace());
        },
        iter: Throws);
}
