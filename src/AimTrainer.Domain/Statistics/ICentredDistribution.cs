namespace AimTrainer.Domain;

/// <summary>A distribution that is symmetric about 0 and falls away on both sides, in its standard form.</summary>
internal interface ICentredDistribution
{
    /// <summary>Probability of a value up to <paramref name="x"/>.</summary>
    double CdfAt(double x);

    /// <summary>Density at <paramref name="x"/>: the slope of <see cref="CdfAt"/>.</summary>
    double DensityAt(double x);
}
