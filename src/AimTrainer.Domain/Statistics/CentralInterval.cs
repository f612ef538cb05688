namespace AimTrainer.Domain;

/// <summary>How far to go to both sides of a mark to catch a given share of what falls around a place beside it.</summary>
internal static class CentralInterval
{
    // Newton's steps shrink quadratically; what remains after these many is a flat stretch where a double can tell no more.
    private const int MostSteps = 200;

    private const double Settled = 1e-14;

    /// <summary>
    /// The h with <c>P(-h &lt; shift + X &lt; h) = share</c>, for a standard X: the half width of a target that is hit that often.
    /// </summary>
    /// <param name="distribution">Of X.</param>
    /// <param name="shift">Distance of X's centre from the mark, to either side (the sign does not matter), in units of X.</param>
    /// <param name="share">More than 0, less than 1 (not checked here).</param>
    /// <remarks>
    /// Newton's method kept within a bracket. Accuracy about 1e-13 relative, times what one unit in the last place of
    /// <paramref name="share"/> is worth in h (which matters only for shares within 1e-6 of 1).
    /// </remarks>
    public static double HalfWidth<T>(T distribution, double shift, double share)
        where T : struct, ICentredDistribution
    {
        // The size only: a mirrored bowler must get the same bits.
        shift = Math.Abs(shift);
        var low = 0.0;
        var high = double.PositiveInfinity;
        var h = shift + StandardNormal.Quantile(0.5 + (share / 2));
        for (var step = 0; step < MostSteps; step++)
        {
            var lacking = share - (distribution.CdfAt(h - shift) - distribution.CdfAt(-h - shift));
            if (lacking == 0)
            {
                return h;
            }

            if (lacking > 0)
            {
                low = h;
            }
            else
            {
                high = h;
            }

            var next = h + (lacking / (distribution.DensityAt(h - shift) + distribution.DensityAt(h + shift)));
            if (!(next > low && next < high))
            {
                next = double.IsPositiveInfinity(high) ? (2 * h) + 1 : (low + high) / 2;
            }

            if (Math.Abs(next - h) <= Settled * next)
            {
                return next;
            }

            h = next;
        }

        return h;
    }
}
