using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>One path from the laydown to its end, with everything on its way: bare doubles whose names carry the unit.</summary>
public sealed class BallPath
{
    private readonly List<PathPiece> _pieces;
    private readonly Slide _slide;
    private readonly double _boardMetres;

    internal BallPath(in Release release, Ball ball, double boardMetres, List<PathPiece> pieces, in PathEnd end)
    {
        (Release, Ball, End, _pieces, _boardMetres) = (release, ball, end, pieces, boardMetres);
        _slide = new Slide(release, ball, boardMetres);
    }

    /// <summary>How the ball left the hand.</summary>
    public Release Release { get; }

    /// <summary>The ball.</summary>
    public Ball Ball { get; }

    /// <summary>What the path comes to.</summary>
    public PathEnd End { get; }

    /// <summary>Speed at release less speed at the end, mph; negative when the ball was turning faster than it rolled and gained speed.</summary>
    public double SpeedLossMph => (Release.SpeedMetresPerSecond - End.EndMetresPerSecond) / Release.MetresPerSecondPerMph;

    /// <summary>Slip of the contact point at the laydown, m/s.</summary>
    public double SlipAtLaydownMetresPerSecond => _slide.Slip;

    /// <summary>How far the ball slides before it heads straight downlane, feet; not a number when it never does.</summary>
    public double SkidLengthFeet => End.BreakpointFeet - Release.LaydownFeet;

    /// <summary>How far it hooks, from there until it rolls (or to the end), feet; not a number when there is no breakpoint.</summary>
    public double HookLengthFeet => (double.IsNaN(End.RollFeet) ? End.EndFeet : End.RollFeet) - End.BreakpointFeet;

    /// <summary>How far it rolls, feet; 0 when it slides to the end.</summary>
    public double RollLengthFeet => double.IsNaN(End.RollFeet) ? 0 : End.EndFeet - End.RollFeet;

    /// <summary>Boards between the path's end and the straight line of its launch, positive inward; not a number when it ends in a gutter.</summary>
    public double HookBoards => End.BoardAt60 - (Release.LaydownBoard - (Math.Tan(Release.LaunchAngleDegrees * Math.PI / 180)
        * (LaneSurface.EndFeet - Release.LaydownFeet) * FrictionGrid.MetresPerFoot / _boardMetres));

    /// <summary>Energy of motion and turning at the laydown, joules.</summary>
    public double EnergyAtLaydownJoules
    {
        get
        {
            var turning = Release.RevsRpm * 2 * Math.PI / 60 * Ball.RadiusOfGyrationMetres;
            return Ball.MassKilograms * ((Release.SpeedMetresPerSecond * Release.SpeedMetresPerSecond) + (turning * turning)) / 2;
        }
    }

    /// <summary>Energy left at the end, joules.</summary>
    public double EnergyAtEndJoules => EnergyAtSlip(End.EndSlipMetresPerSecond);

    /// <summary>Energy left at a distance, joules; it never rises on the way.</summary>
    /// <exception cref="ArgumentOutOfRangeException">As for <see cref="At"/>.</exception>
    public double EnergyAtJoules(double feet) => EnergyAtSlip(At(feet).SlipMetresPerSecond);

    /// <summary>Where the ball is at a distance.</summary>
    /// <param name="feet">From the laydown to the end of the path.</param>
    /// <exception cref="ArgumentOutOfRangeException">Before the laydown or beyond the end.</exception>
    public PathPoint At(double feet)
    {
        if (!(feet >= Release.LaydownFeet && feet <= End.EndFeet))
        {
            throw new ArgumentOutOfRangeException(
                nameof(feet), feet, string.Create(CultureInfo.InvariantCulture, $"allowed: {Release.LaydownFeet} to {End.EndFeet}"));
        }

        var metres = feet * FrictionGrid.MetresPerFoot;
        var piece = _pieces.FindIndex(one => metres <= one.End);
        var state = piece < 0 ? _pieces[^1].To : _pieces[piece].At(Math.Max(metres, _pieces[piece].Start), _slide);
        var (forward, inward) = (_slide.FinalX + (state.Slip * _slide.ShareX), (_slide.FinalY + (state.Slip * _slide.ShareY)) * _boardMetres);
        return new PathPoint(
            feet, state.Board, state.Seconds, Math.Atan2(inward, forward) * 180 / Math.PI, Math.Sqrt((forward * forward) + (inward * inward)), state.Slip);
    }

    /// <summary>The bowler's board at a distance, for whoever works in units; null before the laydown and beyond the end.</summary>
    public Board? BoardAt(Feet distance) =>
        distance.Value >= Release.LaydownFeet && distance.Value <= End.EndFeet ? Board.FromBoards(At(distance.Value).Board) : null;

    /// <summary>Points every so many feet, from the laydown to the end, both included.</summary>
    /// <param name="everyFeet">More than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">0 or less.</exception>
    public IReadOnlyList<PathPoint> Points(double everyFeet)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(everyFeet);
        var whole = Enumerable.Range(0, (int)(LaneSurface.EndFeet / everyFeet) + 1).Select(i => i * everyFeet)
            .Where(feet => feet > Release.LaydownFeet && feet < End.EndFeet);
        return [.. whole.Prepend(Release.LaydownFeet).Append(End.EndFeet).Distinct().Select(At)];
    }

    /// <remarks>The slip alone takes energy: half the mass × slip² × the share of it that becomes speed.</remarks>
    private double EnergyAtSlip(double slip)
    {
        var share = Ball.Beta / (1 + Ball.Beta);
        return EnergyAtLaydownJoules - (Ball.MassKilograms * ((_slide.Slip * _slide.Slip) - (slip * slip)) * share / 2);
    }
}
