namespace AimTrainer.Analysis;

/// <summary>How a planned session stands.</summary>
public enum SessionStanding
{
    /// <summary>Its week has not begun.</summary>
    ToCome,

    /// <summary>Its week is on, or it may still be made up.</summary>
    Open,

    /// <summary>Thrown in its week.</summary>
    Done,

    /// <summary>Thrown after its week, within the program's rule.</summary>
    MadeUp,

    /// <summary>Not thrown, and too late now.</summary>
    Missed,
}
