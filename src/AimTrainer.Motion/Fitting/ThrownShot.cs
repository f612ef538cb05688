using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>One shot as a fit sees it: which of its own numbers are free, and how far a path is from what was measured.</summary>
internal sealed class ThrownShot
{
    /// <summary>Least spread of a speed measured on the way, mph.</summary>
    private const double LeastSpeedSpread = 0.05;

    /// <summary>How far to go for a numerical derivative.</summary>
    private const double LaydownStep = 0.05, AngleStep = 0.02, SpeedStep = 0.05, RevsStep = 2, RotationStep = 0.3;

    private readonly FitShot _shot;
    private readonly double _boardsPerFoot;
    private readonly int _speed = -1, _revs = -1, _rotation = -1;
    private readonly double[] _steps;

    public ThrownShot(FitShot shot, double widthInches)
    {
        _shot = shot;
        _boardsPerFoot = 12 / (widthInches / LaneProfile.BoardCount);
        List<double> steps = [LaydownStep, AngleStep];
        List<double> start = [.. Straight()];
        var measured = shot.Boards.Count;
        if (shot.SpeedSpreadMph > 0 || shot.SpeedPlace != SpeedPlace.Release)
        {
            // Balls lose about 2.7 mph on their way, half of it on the average: only a place to start from.
            (_speed, measured) = (steps.Count, measured + 1);
            steps.Add(SpeedStep);
            start.Add(shot.SpeedMph + (shot.SpeedPlace switch { SpeedPlace.Pins => 2.7, SpeedPlace.Average => 1, _ => 0 }));
        }

        if (shot.RevsSpreadRpm > 0)
        {
            (_revs, measured) = (steps.Count, measured + 1);
            steps.Add(RevsStep);
            start.Add(shot.RevsRpm);
        }

        if (shot.AxisRotationSpreadDegrees > 0)
        {
            (_rotation, measured) = (steps.Count, measured + 1);
            steps.Add(RotationStep);
            start.Add(shot.AxisRotationDegrees);
        }

        (_steps, Start, Measured) = ([.. steps], [.. start], measured);
    }

    /// <summary>Laydown, angle, and what else of the throw is not taken as exact: where to start.</summary>
    public double[] Start { get; }

    /// <summary>How many values were measured.</summary>
    public int Measured { get; }

    /// <summary>Whether only boards weigh in, so that the noise changes nothing but the limits.</summary>
    public bool OnlyBoards => Measured == _shot.Boards.Count;

    /// <summary>How far to go for a numerical derivative, towards the middle of what is allowed.</summary>
    public double Step(int which, double value) => which == 0 && value > Board.LaneCentre.Boards ? -_steps[which] : which >= 2 ? -_steps[which] : _steps[which];

    /// <summary>Keeps the throw within what a path can be worked out for.</summary>
    public void Clamp(double[] throws)
    {
        throws[0] = Math.Clamp(throws[0], Track.NearEdge, Track.FarEdge);
        throws[1] = Math.Clamp(throws[1], -Motion.Release.WidestLaunchDegrees, Motion.Release.WidestLaunchDegrees - AngleStep);
        Within(_speed, 5, 35);
        Within(_revs, 2, Motion.Release.MostRpm);
        Within(_rotation, -89, 89);

        void Within(int which, double low, double high)
        {
            if (which >= 0)
            {
                throws[which] = Math.Clamp(throws[which], low, high);
            }
        }
    }

    /// <summary>A throw as a release.</summary>
    public Release Release(double[] throws) => new(
        _shot.Hand,
        throws[0],
        throws[1],
        (_speed < 0 ? _shot.SpeedMph : throws[_speed]) * Motion.Release.MetresPerSecondPerMph,
        _revs < 0 ? _shot.RevsRpm : throws[_revs])
    {
        AxisRotationDegrees = _rotation < 0 ? _shot.AxisRotationDegrees : throws[_rotation],
        AxisTiltDegrees = _shot.AxisTiltDegrees,
        LaydownFeet = _shot.LaydownFeet,
    };

    /// <summary>How far a throw is from what was measured, in standard deviations: boards first.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="throws">The throw.</param>
    /// <param name="noise">Standard deviation of a measured board.</param>
    public double[] Residuals(BallPath path, double[] throws, double noise)
    {
        var residuals = new double[Measured];
        var at = 0;
        foreach (var board in _shot.Boards)
        {
            residuals[at++] = (BoardAt(path, board.Feet) - board.Board) / noise;
        }

        if (_speed >= 0)
        {
            var mph = _shot.SpeedPlace switch
            {
                SpeedPlace.Pins => path.End.EndMetresPerSecond / Motion.Release.MetresPerSecondPerMph,
                SpeedPlace.Average => (path.End.EndFeet - _shot.LaydownFeet) * FrictionGrid.MetresPerFoot / path.End.EndSeconds / Motion.Release.MetresPerSecondPerMph,
                _ => throws[_speed],
            };
            residuals[at++] = (mph - _shot.SpeedMph) / (_shot.SpeedPlace == SpeedPlace.Release ? _shot.SpeedSpreadMph : Math.Max(_shot.SpeedSpreadMph, LeastSpeedSpread));
        }

        if (_revs >= 0)
        {
            residuals[at++] = (throws[_revs] - _shot.RevsRpm) / _shot.RevsSpreadRpm;
        }

        if (_rotation >= 0)
        {
            residuals[at] = (throws[_rotation] - _shot.AxisRotationDegrees) / _shot.AxisRotationSpreadDegrees;
        }

        return residuals;
    }

    /// <summary>A trial throw may end in a gutter, and a crossing may lie before the laydown: there the ball is taken to go straight on.</summary>
    private double BoardAt(BallPath path, double feet)
    {
        var seen = Math.Clamp(feet, _shot.LaydownFeet, path.End.EndFeet);
        var point = path.At(seen);
        return point.Board + (Math.Tan(point.AngleDegrees * Math.PI / 180) * (feet - seen) * _boardsPerFoot);
    }

    /// <summary>Laydown and launch angle of the straight line through the two nearest crossings.</summary>
    private double[] Straight()
    {
        var nearest = _shot.Boards.AsEnumerable().OrderBy(board => board.Feet).Take(2).ToList();
        var slope = (nearest[1].Board - nearest[0].Board) / (nearest[1].Feet - nearest[0].Feet);
        double[] straight =
        [
            nearest[0].Board + (slope * (_shot.LaydownFeet - nearest[0].Feet)),
            -Math.Atan(slope / _boardsPerFoot) * 180 / Math.PI,
        ];
        Clamp(straight);
        return straight;
    }
}
