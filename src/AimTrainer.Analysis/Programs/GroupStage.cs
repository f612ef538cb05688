namespace AimTrainer.Analysis;

/// <summary>Where a group is in its program on a day.</summary>
public enum GroupStage
{
    /// <summary>The first week has not begun.</summary>
    ToBegin,

    /// <summary>Somebody has a session that can be thrown.</summary>
    Open,

    /// <summary>Everybody has thrown what can be thrown now; more comes.</summary>
    WeekDone,

    /// <summary>Nothing is left that could be thrown, now or later.</summary>
    Over,
}
