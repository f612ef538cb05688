namespace AimTrainer.Analysis;

/// <summary>Why a bowler may need the coach, the most pressing first.</summary>
public enum NeedKind
{
    /// <summary>The bowler said that something is sore. A reason to ask, and to stop.</summary>
    Sore,

    /// <summary>The spread has grown and the throws have become slower.</summary>
    Tired,

    /// <summary>The spread has grown.</summary>
    SpreadGrowing,

    /// <summary>The next shot is long in coming.</summary>
    OffPace,
}
