namespace AimTrainer.Analysis;

/// <summary>What can be said of a difference.</summary>
public enum ComparisonVerdict
{
    /// <summary>Too few throws for any verdict.</summary>
    TooFew,

    /// <summary>Neither a difference nor its absence is shown.</summary>
    Open,

    /// <summary>Shown to be smaller than the margin.</summary>
    Equal,

    /// <summary>Shown to differ; whether by more than the margin is not shown.</summary>
    Different,

    /// <summary>Shown to differ by more than the margin.</summary>
    DifferentBeyondMargin,

    /// <summary>Not judged: a place on the way that only shows the shape of the paths.</summary>
    NotJudged,
}
