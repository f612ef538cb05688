namespace AimTrainer.Motion;

/// <summary>
/// 95 % limits of a fitted number: from the curvature where the sum of squares is a bowl, from its profile (all else fitted anew)
/// where it is flat or ends at what is allowed.
/// </summary>
/// <param name="solver">The fit.</param>
/// <param name="sheet">The lane's sheet.</param>
/// <param name="best">Where the fit came to.</param>
/// <param name="free">What was fitted.</param>
/// <param name="factor">Standard deviations of a limit.</param>
internal sealed class FitLimits(FitSolver solver, LaneSurface sheet, FitState best, List<LaneParameter> free, double factor)
{
    /// <summary>Half width, as a share of the value (of the length for a pattern), up to which a bowl is trusted.</summary>
    private const double TrustedShare = 0.3, TrustedPatternShare = 0.05;

    private const int Halvings = 8;

    /// <summary>The limits of one number; null where the shots set none.</summary>
    /// <param name="which">Its place among the free ones.</param>
    /// <param name="spread">Its standard deviation from the curvature; infinite when there is none.</param>
    public (double? Low, double? High) Of(int which, double spread)
    {
        var (parameter, value) = (free[which], best.Lane[free[which]]);
        var (least, most) = LaneNumbers.Allowed(parameter, sheet);
        var half = factor * spread;
        var trusted = (parameter == LaneParameter.PatternFeet ? TrustedPatternShare : TrustedShare) * value;

        // On a logarithmic scale, on which errors of a friction are nearer to even.
        var (low, high) = (value * Math.Exp(-half / value), value * Math.Exp(half / value));
        return half <= trusted && low > least && high < most
            ? (low, high)
            : (Profile(parameter, value, least, half), Profile(parameter, value, most, half));
    }

    /// <summary>Where the profile has risen by the square of the factor, between the best value and an end of what is allowed.</summary>
    private double? Profile(LaneParameter parameter, double value, double end, double half)
    {
        var others = free.Where(one => one != parameter).ToList();
        var threshold = factor * factor;
        var inside = value;
        var start = best;
        var outside = double.IsFinite(half) && Math.Abs(end - value) > half ? value + Math.CopySign(half, end - value) : end;
        while (Rise(outside) < threshold)
        {
            if (outside == end)
            {
                return null;
            }

            inside = outside;
            outside = Math.Abs(end - value) > 2 * Math.Abs(outside - value) ? value + (2 * (outside - value)) : end;
        }

        for (var i = 0; i < Halvings; i++)
        {
            var middle = (inside + outside) / 2;
            (inside, outside) = Rise(middle) < threshold ? (middle, outside) : (inside, middle);
        }

        return (inside + outside) / 2;

        double Rise(double at)
        {
            var there = solver.Minimise(solver.At(start.Lane.With(parameter, at), start.Throws), others);
            start = there.Cost - best.Cost < threshold ? there : start;
            return there.Cost - best.Cost;
        }
    }
}
