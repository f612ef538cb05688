namespace AimTrainer.Analysis;

/// <summary>How many more throws settle an open question, if difference and scatter stay as they are.</summary>
internal static class ThrowsNeeded
{
    /// <summary>More than so many are not worth promising.</summary>
    public const int Most = 300;

    // Four times in five it is then settled.
    private const double Power = 0.80;

    /// <summary>More good throws of each ball until either a difference or its being smaller than the margin is shown in four cases of five.</summary>
    /// <param name="difference">With its error and degrees of freedom.</param>
    /// <param name="margin">More than 0.</param>
    /// <param name="each">Throws of each ball now (harmonic mean).</param>
    /// <returns>1 to <see cref="Most"/>; null when more are needed.</returns>
    public static int? Of(MeanDifference difference, double margin, double each)
    {
        var size = Math.Abs(difference.Difference.Value!.Value);
        for (var more = 1; more <= Most; more++)
        {
            var freedom = difference.Freedom!.Value + (2 * more);
            var error = difference.StandardError!.Value * Math.Sqrt(each / (each + more));
            var power = EstimateLimits.TwoSidedT(freedom, (2 * Power) - 1);
            if (size >= (EstimateLimits.TwoSidedT(freedom, 0.95) + power) * error
                || margin - size >= (EstimateLimits.TwoSidedT(freedom, 0.90) + power) * error)
            {
                return more;
            }
        }

        return null;
    }
}
