namespace AimTrainer.Domain;

/// <summary>What sort of mark is on the lane.</summary>
public enum MarkerKind
{
    /// <summary>One of the arrows.</summary>
    Arrow,

    /// <summary>One of the dots before the arrows.</summary>
    Dot,

    /// <summary>One of the marks beyond the arrows.</summary>
    Downlane,
}
