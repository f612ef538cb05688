using AimTrainer.Domain;
using AimTrainer.Motion;

namespace AimTrainer.Feeds;

/// <summary>
/// A ball that skids, hooks and rolls over the oil. A release that the model does not take (slower than 4.5 mph, more than 10 degrees to a
/// side, laid down off the boards) runs straight. Works out a path once and keeps it: safe for one feed, not for several at once.
/// </summary>
/// <param name="surface">Oil and frictions.</param>
/// <param name="ball">The ball.</param>
/// <param name="axisRotationDegrees">Axis rotation of every throw, -90 to 90.</param>
/// <param name="axisTiltDegrees">Axis tilt of every throw, 0 to 90.</param>
public sealed class HookingPath(LaneSurface surface, Ball ball, double axisRotationDegrees = 45, double axisTiltDegrees = 12) : ISimulatedPath
{
    /// <summary>Boards a ball is taken to lie outside of the edge that it fell over.</summary>
    private const double BeyondTheEdge = 0.5;

    private readonly StraightPath _straight = new();
    private (Release Release, BallPath? Path) _last;

    /// <inheritdoc/>
    public double BoardAt(Release release, Feet distance, LaneProfile lane)
    {
        if (PathOf(release) is not { } path)
        {
            return _straight.BoardAt(release, distance, lane);
        }

        if (distance.Value <= path.End.EndFeet)
        {
            return path.At(Math.Max(distance.Value, 0)).Board;
        }

        var edge = path.At(path.End.EndFeet).Board;
        return path.End.Finish == PathFinish.Pins ? edge : edge < Board.LaneCentre.Boards ? edge - BeyondTheEdge : edge + BeyondTheEdge;
    }

    private BallPath? PathOf(Release release)
    {
        if (_last.Path is { } known && _last.Release == release)
        {
            return known;
        }

        var thrown = new Motion.Release(
            release.Hand,
            release.LaydownBoard,
            release.LaunchAngleDegrees,
            release.SpeedMilesPerHour * Motion.Release.MetresPerSecondPerMph,
            release.RevsRpm)
        {
            AxisRotationDegrees = axisRotationDegrees,
            AxisTiltDegrees = axisTiltDegrees,
        };
        var path = thrown.Problem() is null ? Paths.Trace(surface, ball, thrown) : null;
        _last = (release, path);
        return path;
    }
}
