namespace AimTrainer.Analysis;

/// <summary>How sides are called.</summary>
public enum SideNames
{
    /// <summary>Inside (toward higher boards) and outside (toward the bowler's own gutter): the same for either hand.</summary>
    InsideOutside,

    /// <summary>Left and right as the bowler sees them.</summary>
    LeftRight,
}
