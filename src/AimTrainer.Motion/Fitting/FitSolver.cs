namespace AimTrainer.Motion;

/// <summary>
/// Least squares with damping (Levenberg, Marquardt) over the lane's numbers and the throw of every shot. Each shot's throw is
/// eliminated by itself (Schur's complement), so that the work grows with the shots and not with their square.
/// </summary>
/// <remarks>Source of the method: Nocedal, Wright, "Numerical Optimization", 2nd ed., 10.3 (from memory).</remarks>
/// <param name="sheet">The lane as its sheet says.</param>
/// <param name="ball">The ball.</param>
/// <param name="shots">The shots.</param>
/// <param name="noise">Standard deviation of a measured board.</param>
/// <param name="cancellationToken">Stops the work.</param>
internal sealed class FitSolver(LaneSurface sheet, Ball ball, IReadOnlyList<ThrownShot> shots, double noise, CancellationToken cancellationToken)
{
    private const int MostRounds = 40, MostTries = 10;

    /// <summary>A fall of the sum of squares that is not worth another round: a thirtieth of a standard deviation.</summary>
    private const double Settled = 1e-3;

    /// <summary>The fit before the first step.</summary>
    public FitState Start()
    {
        var throws = shots.Select(shot => shot.Start).ToArray();
        return At(LaneNumbers.Of(sheet), throws);
    }

    /// <summary>The same throws with another lane.</summary>
    public FitState At(LaneNumbers lane, double[][] throws) => new(lane, throws, Residuals(lane, throws).Sum(Square));

    /// <summary>The sum of squares of each shot.</summary>
    public IReadOnlyList<double> Costs(FitState state) => [.. Residuals(state.Lane, state.Throws).Select(Square)];

    /// <summary>Goes down to the least sum of squares.</summary>
    /// <param name="state">Where to start.</param>
    /// <param name="free">Which of the lane's numbers may change.</param>
    public FitState Minimise(FitState state, IReadOnlyList<LaneParameter> free)
    {
        var damping = 1e-3;
        for (var round = 0; round < MostRounds; round++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            var slopes = Slopes(state, free);
            var before = state.Cost;
            for (var attempt = 0; attempt < MostTries; attempt++)
            {
                var next = Moved(state, free, slopes, damping);
                if (next is not null && next.Cost < state.Cost)
                {
                    (state, damping) = (next, Math.Max(damping / 8, 1e-9));
                    break;
                }

                damping *= 8;
            }

            if (before - state.Cost < Settled)
            {
                break;
            }
        }

        return state;
    }

    /// <summary>How much the shots tell of the lane's numbers, whatever the throws were: the inverse of a covariance.</summary>
    public double[,] Information(FitState state, IReadOnlyList<LaneParameter> free)
    {
        var (left, _) = Reduced(Slopes(state, free), free.Count, 0);
        return left;
    }

    private FitState? Moved(FitState state, IReadOnlyList<LaneParameter> free, List<ShotSlopes> slopes, double damping)
    {
        var (left, right) = Reduced(slopes, free.Count, damping);
        var step = new double[free.Count];
        if (free.Count > 0)
        {
            if (SmallMatrix.Factor(left) is not { } factor)
            {
                return null;
            }

            step = SmallMatrix.Solve(factor, right);
        }

        var lane = state.Lane;
        for (var i = 0; i < free.Count; i++)
        {
            var (low, high) = LaneNumbers.Allowed(free[i], sheet);
            var value = Math.Clamp(lane[free[i]] + step[i], low, high);
            step[i] = value - lane[free[i]];
            lane = lane.With(free[i], value);
        }

        var throws = new double[shots.Count][];
        for (var i = 0; i < shots.Count; i++)
        {
            if (slopes[i].Change(step, damping) is not { } change)
            {
                return null;
            }

            throws[i] = [.. state.Throws[i].Zip(change, (value, by) => value + by)];
            shots[i].Clamp(throws[i]);
        }

        return At(lane, throws);
    }

    private static (double[,] Left, double[] Right) Reduced(List<ShotSlopes> slopes, int free, double damping)
    {
        var (left, right) = (new double[free, free], new double[free]);
        foreach (var shot in slopes)
        {
            shot.AddTo(left, right, damping);
        }

        return (left, right);
    }

    private List<ShotSlopes> Slopes(FitState state, IReadOnlyList<LaneParameter> free)
    {
        var here = Residuals(state.Lane, state.Throws);
        var ofLane = free.Select(parameter =>
        {
            var (_, high) = LaneNumbers.Allowed(parameter, sheet);
            var step = parameter switch { LaneParameter.OilFriction => 3e-4, LaneParameter.DryFriction => 1e-3, _ => 0.1 };
            step = state.Lane[parameter] + step > high ? -step : step;
            var there = Residuals(state.Lane.With(parameter, state.Lane[parameter] + step), state.Throws);
            return here.Zip(there, (from, to) => Slope(from, to, step)).ToList();
        }).ToList();
        var surface = state.Lane.On(sheet);
        var slopes = new List<ShotSlopes>(shots.Count);
        for (var i = 0; i < shots.Count; i++)
        {
            var (shot, throws) = (shots[i], state.Throws[i]);
            var moved = new double[throws.Length][];
            for (var which = 0; which < throws.Length; which++)
            {
                moved[which] = [.. throws];
                moved[which][which] += shot.Step(which, throws[which]);
            }

            var paths = Paths.Trace(surface, ball, [.. moved.Select(shot.Release)]);
            var ofThrow = moved.Select((one, which) => Slope(here[i], shot.Residuals(paths[which], one, noise), shot.Step(which, throws[which]))).ToArray();
            slopes.Add(new ShotSlopes(here[i], [.. ofLane.Select(all => all[i])], ofThrow));
        }

        return slopes;
    }

    private List<double[]> Residuals(LaneNumbers lane, double[][] throws)
    {
        var paths = Paths.Trace(lane.On(sheet), ball, [.. shots.Select((shot, i) => shot.Release(throws[i]))]);
        return [.. shots.Select((shot, i) => shot.Residuals(paths[i], throws[i], noise))];
    }

    private static double[] Slope(double[] here, double[] there, double step) => [.. here.Zip(there, (from, to) => (to - from) / step)];

    private static double Square(double[] values)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value * value;
        }

        return sum;
    }
}
