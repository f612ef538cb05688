using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

/// <summary>
/// The release as vectors in the lane's own frame, written down a second time and by itself: X downlane, Y left from the right
/// edge in metres, Z up; slip = v + w × (-R Z).
/// Source: physics reference, sections 2 and 3 (frame, release, slip of the point of contact).
/// </summary>
internal sealed record LabFrame(double Vx, double Vy, double Wx, double Wy, double Wz, double Radius, double GyrationSquared, double Mass)
{
    public double SlipX => Vx - (Radius * Wy);

    public double SlipY => Vy + (Radius * Wx);

    public double Slip => Math.Sqrt((SlipX * SlipX) + (SlipY * SlipY));

    public double Energy => Mass * ((Vx * Vx) + (Vy * Vy) + (GyrationSquared * ((Wx * Wx) + (Wy * Wy) + (Wz * Wz)))) / 2;

    /// <summary>The horizontal part of k² w + R Z × v.</summary>
    public (double X, double Y) Conserved => ((GyrationSquared * Wx) - (Radius * Vy), (GyrationSquared * Wy) + (Radius * Vx));

    public static LabFrame Of(in Release release, Ball ball)
    {
        var side = release.Hand == Hand.Right ? 1 : -1;
        var heading = -side * release.LaunchAngleDegrees * Math.PI / 180;
        var (turn, tilt) = (release.AxisRotationDegrees * Math.PI / 180, release.AxisTiltDegrees * Math.PI / 180);
        var w = release.RevsRpm * Math.PI / 30;
        var (along, left) = (-side * w * Math.Cos(tilt) * Math.Sin(turn), w * Math.Cos(tilt) * Math.Cos(turn));
        return new LabFrame(
            release.SpeedMetresPerSecond * Math.Cos(heading),
            release.SpeedMetresPerSecond * Math.Sin(heading),
            (along * Math.Cos(heading)) - (left * Math.Sin(heading)),
            (along * Math.Sin(heading)) + (left * Math.Cos(heading)),
            side * w * Math.Sin(tilt),
            ball.RadiusMetres,
            ball.RadiusOfGyrationMetres * ball.RadiusOfGyrationMetres,
            ball.MassKilograms);
    }

    /// <summary>The velocities at a point of a path: heading and speed as told, and turning from the slip along the first slip's direction.</summary>
    public LabFrame At(PathPoint point, Hand hand)
    {
        var heading = point.AngleDegrees * Math.PI / 180 * (hand == Hand.Right ? 1 : -1);
        var (vx, vy) = (point.MetresPerSecond * Math.Cos(heading), point.MetresPerSecond * Math.Sin(heading));
        var (slipX, slipY) = (point.SlipMetresPerSecond * SlipX / Slip, point.SlipMetresPerSecond * SlipY / Slip);
        return this with { Vx = vx, Vy = vy, Wx = (slipY - vy) / Radius, Wy = (vx - slipX) / Radius };
    }
}
