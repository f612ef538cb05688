namespace AimTrainer.Analysis;

/// <summary>
/// How well a model describes a series, with its number of parameters held against it: the lower the better. From the normal
/// likelihood with the residual variance as one more parameter.
/// </summary>
/// <remarks>Source: Akaike 1974, IEEE Transactions on Automatic Control 19:716-723; Schwarz 1978, Annals of Statistics 6:461-464 (from memory).</remarks>
/// <param name="Akaike">AIC.</param>
/// <param name="Bayes">BIC: the one that decisions here rest on.</param>
public readonly record struct InformationCriteria(double Akaike, double Bayes)
{
    /// <summary>Of two models, one is called the better only when its BIC is lower by more than this.</summary>
    public const double Clearly = 6;

    /// <summary>The criteria of a model.</summary>
    /// <param name="count">Values, n.</param>
    /// <param name="residualSquares">Sum of the squared residuals.</param>
    /// <param name="parameters">Free parameters without the residual variance.</param>
    /// <param name="scale">The size of the values: an exact fit is taken as good to twelve digits, since no logarithm has a 0.</param>
    internal static InformationCriteria Of(int count, double residualSquares, int parameters, double scale)
    {
        var least = Math.Max(scale, double.Epsilon * 1e200) * 1e-12;
        var mean = Math.Max(residualSquares / count, least * least);
        var misfit = count * (Math.Log(2 * Math.PI) + 1 + Math.Log(mean));
        return new InformationCriteria(misfit + (2 * (parameters + 1)), misfit + ((parameters + 1) * Math.Log(count)));
    }
}
