namespace AimTrainer.Analysis;

/// <summary>What the record may say about a bowler's spread.</summary>
public enum ImprovementVerdict
{
    /// <summary>Fewer sessions than the first look needs.</summary>
    TooFew,

    /// <summary>The limits hold both less and more spread: neither can be said.</summary>
    NotShown,

    /// <summary>The spread became smaller.</summary>
    Improved,

    /// <summary>The spread became larger.</summary>
    Worse,
}
