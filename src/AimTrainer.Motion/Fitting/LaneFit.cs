using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>Finds the frictions and the pattern end that explain measured shots, so that predictions become this lane's.</summary>
/// <remarks>
/// Laydown, launch angle, and what else of a throw is not exact are found with the lane: their errors would otherwise be taken for
/// friction. What it does and how well: <c>docs/motion.md</c>.
/// </remarks>
public static class LaneFit
{
    /// <summary>Most shots of one fit.</summary>
    public const int MostShots = 2000;

    /// <summary>Noisiest board.</summary>
    public const double MostNoise = 3;

    /// <summary>Taken where the noise must weigh against a spread before it is known.</summary>
    private const double UsualNoise = 0.25;

    /// <summary>Below this a noise is rounding, not a measurement.</summary>
    private const double LeastNoise = 1e-4;

    /// <summary>Rounds in which an estimated noise and the fit settle with each other.</summary>
    private const int NoiseRounds = 3;

    private const double Confidence = 0.95;

    /// <summary>A shot whose residuals are on average beyond so many noises stands out.</summary>
    private const double StandsOut = 3;

    /// <summary>Standard deviations of the weak belief in the covariance.</summary>
    private static readonly ValueList<double> _weak = [0.02, 0.05, 5];

    /// <summary>Fits.</summary>
    /// <param name="sheet">The lane as its sheet says: the oil's shape, and where to start.</param>
    /// <param name="ball">The ball that was thrown.</param>
    /// <param name="shots">The shots, 1 to <see cref="MostShots"/>.</param>
    /// <param name="settings">How.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>The fit; it says of each number whether the shots can tell it.</returns>
    /// <exception cref="ArgumentException">Ball, shots or settings are outside what is allowed, or there are fewer measured values than unknowns.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static LaneFitResult Fit(LaneSurface sheet, Ball ball, IReadOnlyList<FitShot> shots, FitSettings settings, CancellationToken cancellationToken = default)
    {
        Check(ball, shots, settings);
        List<LaneParameter> free = [.. Fittable(sheet).Where(one => !settings.Keep.Contains(one))];
        if (free.Count == 0)
        {
            throw new ArgumentException("nothing is left to fit; keep fewer numbers of the sheet");
        }

        foreach (var parameter in free)
        {
            var (low, high) = LaneNumbers.Allowed(parameter, sheet);
            if (!(LaneNumbers.Of(sheet)[parameter] >= low && LaneNumbers.Of(sheet)[parameter] <= high))
            {
                throw new ArgumentException(string.Create(
                    CultureInfo.InvariantCulture, $"the sheet's {FitWords.Of(parameter)} is {LaneNumbers.Of(sheet)[parameter]}; a fit starts from {low} to {high}"));
            }
        }

        List<ThrownShot> thrown = [.. shots.Select(shot => new ThrownShot(shot, sheet.WidthInches))];
        var freedom = thrown.Sum(shot => shot.Measured - shot.Start.Length) - free.Count;
        if (freedom < 1)
        {
            throw new ArgumentException(string.Create(
                CultureInfo.InvariantCulture,
                $"{shots.Count} shots leave {freedom} measured values to spare for {free.Count} unknowns of the lane; add shots, or crossings at more distances"));
        }

        var noise = settings.NoiseBoards ?? UsualNoise;
        var solver = new FitSolver(sheet, ball, thrown, noise, cancellationToken);
        var state = solver.Minimise(solver.Start(), free);
        if (settings.NoiseBoards is null)
        {
            for (var round = 0; round < NoiseRounds; round++)
            {
                noise = Math.Clamp(noise * Math.Sqrt(state.Cost / freedom), LeastNoise, 10 * MostNoise);
                solver = new FitSolver(sheet, ball, thrown, noise, cancellationToken);
                state = solver.At(state.Lane, state.Throws);
                if (thrown.All(shot => shot.OnlyBoards))
                {
                    break;
                }

                state = solver.Minimise(state, free);
            }
        }

        var factor = settings.NoiseBoards is null ? new StudentT(freedom).Quantile((1 + Confidence) / 2) : StandardNormal.Quantile((1 + Confidence) / 2);
        var information = solver.Information(state, free);
        var limits = new FitLimits(solver, sheet, state, free, factor);
        var words = new FitWords(shots, state.Lane, sheet, noise);
        var inverse = SmallMatrix.Inverse(information);
        var parameters = Enum.GetValues<LaneParameter>().Select(parameter =>
        {
            var at = free.IndexOf(parameter);
            if (at < 0)
            {
                return new FittedParameter(parameter, state.Lane[parameter], false, null, null, null);
            }

            var (low, high) = limits.Of(at, inverse is null ? double.PositiveInfinity : Math.Sqrt(inverse[at, at]));
            return new FittedParameter(parameter, state.Lane[parameter], true, low, high, words.WhyNot(parameter, low, high, free, inverse));
        }).ToValueList();
        return new LaneFitResult(
            state.Lane,
            parameters,
            noise,
            settings.NoiseBoards is not null,
            state.Cost / freedom,
            freedom,
            shots.Count,
            Covariance(information, free),
            Misfits(solver, state, thrown));
    }

    /// <summary>What can be fitted on a lane: without oil there is one friction and no pattern, and oil that never ends has no end.</summary>
    private static List<LaneParameter> Fittable(LaneSurface sheet) => sheet.Oil.AsEnumerable().All(stretch => stretch.IsDry)
        ? [LaneParameter.DryFriction]
        : sheet.PatternFeet is null ? [LaneParameter.OilFriction, LaneParameter.DryFriction] : [.. Enum.GetValues<LaneParameter>()];

    private static ValueList<double> Covariance(double[,] information, List<LaneParameter> free)
    {
        for (var i = 0; i < free.Count; i++)
        {
            information[i, i] += 1 / (_weak[(int)free[i]] * _weak[(int)free[i]]);
        }

        var inverse = SmallMatrix.Inverse(information)!;
        var all = new double[LaneNumbers.Count * LaneNumbers.Count];
        for (var i = 0; i < free.Count; i++)
        {
            for (var j = 0; j < free.Count; j++)
            {
                all[((int)free[i] * LaneNumbers.Count) + (int)free[j]] = inverse[i, j];
            }
        }

        return all.ToValueList();
    }

    private static ValueList<(int Shot, double Noises)> Misfits(FitSolver solver, FitState state, List<ThrownShot> shots) => solver.Costs(state)
        .Select((cost, i) => (Shot: i, Noises: Math.Sqrt(cost / Math.Max(1, shots[i].Measured - shots[i].Start.Length))))
        .Where(one => one.Noises > StandsOut).OrderByDescending(one => one.Noises).ToValueList();

    private static void Check(Ball ball, IReadOnlyList<FitShot> shots, FitSettings settings)
    {
        if (ball.Problem() is { } wrong)
        {
            throw new ArgumentException(wrong, nameof(ball));
        }

        if (shots.Count is < 1 or > MostShots)
        {
            throw new ArgumentException($"{shots.Count} shots; allowed: 1 to {MostShots}", nameof(shots));
        }

        for (var i = 0; i < shots.Count; i++)
        {
            if (shots[i].Problem() is { } problem)
            {
                throw new ArgumentException($"shot {i + 1}: {problem}", nameof(shots));
            }
        }

        if (settings.NoiseBoards is { } noise && !(noise > 0 && noise <= MostNoise))
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"a noise of {noise} boards; allowed: more than 0, up to {MostNoise}"), nameof(settings));
        }
    }
}
