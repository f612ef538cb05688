namespace AimTrainer.Analysis;

/// <summary>Whether a difference is shown to be smaller than a margin: two one-sided tests.</summary>
/// <remarks>Source: Schuirmann, J. Pharmacokinet. Biopharm. 15 (1987) 657-680: both are passed at 5 % where the 90 % limits lie inside the margin.</remarks>
/// <param name="Margin">A difference up to here, to either side, does not matter; in the measure's own unit.</param>
/// <param name="Low">Lower 90 % limit.</param>
/// <param name="High">Upper 90 % limit.</param>
/// <param name="P">The larger of the two p.</param>
public sealed record Equivalence(double Margin, double Low, double High, double P)
{
    /// <summary>Whether the difference is smaller than the margin, at 5 %.</summary>
    public bool Shown => P < 0.05;

    /// <summary>Tests a difference.</summary>
    /// <param name="difference">With its error and degrees of freedom.</param>
    /// <param name="margin">More than 0.</param>
    /// <returns>The test; null when the error of the difference is not known.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The margin is not more than 0.</exception>
    public static Equivalence? Of(MeanDifference difference, double margin)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(margin);
        if (difference is not { Difference.Value: { } value, StandardError: { } error, Freedom: { } freedom })
        {
            return null;
        }

        var reach = EstimateLimits.TwoSidedT(freedom, 0.90) * error;
        var p = Math.Max(Tails.Above((value + margin) / error, freedom), Tails.Above((margin - value) / error, freedom));
        return new Equivalence(margin, value - reach, value + reach, p);
    }
}
