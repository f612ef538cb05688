namespace AimTrainer.Analysis;

/// <summary>On which scale a series is judged.</summary>
public enum TrendScale
{
    /// <summary>Logarithms of a spread: a change by a tenth counts the same at every level. All values are above 0.</summary>
    Logarithm,

    /// <summary>The values as they are: a bias, or anything else. Such a series never says "improved".</summary>
    AsGiven,
}
