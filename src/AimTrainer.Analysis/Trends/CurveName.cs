namespace AimTrainer.Analysis;

/// <summary>What a series looks like over many sessions.</summary>
public enum CurveName
{
    /// <summary>Too few sessions to say.</summary>
    TooFew,

    /// <summary>No change that a curve or a line would describe clearly better than a level.</summary>
    Level,

    /// <summary>A change, but no bend in it that can be told from a straight line: where it will end is not known.</summary>
    StraightLine,

    /// <summary>Bent; which of the two curves it is cannot be told.</summary>
    CannotTell,

    /// <summary>Each session takes away the same share of what is left.</summary>
    Exponential,

    /// <summary>The share that a session takes away becomes smaller with every session.</summary>
    Power,
}
