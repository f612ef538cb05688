namespace AimTrainer.Sessions;

/// <summary>How a station's line feed stands.</summary>
public enum FeedState
{
    /// <summary>Nothing is connected.</summary>
    Absent,

    /// <summary>Something is connected and has not sent a line yet, but for its hello.</summary>
    Connecting,

    /// <summary>Connected, and no line came for a while.</summary>
    Silent,

    /// <summary>Lines come.</summary>
    Live,
}
