namespace AimTrainer.Reports;

/// <summary>What one of the three sentences is about.</summary>
public enum SentenceTopic
{
    /// <summary>Where the shots go on average.</summary>
    Lean,

    /// <summary>Why they scatter.</summary>
    Cause,

    /// <summary>Whether the bowler is getting better.</summary>
    Trend,
}
