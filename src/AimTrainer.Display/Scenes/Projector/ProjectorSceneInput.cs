using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>Everything that a projector's scene hangs on.</summary>
public sealed record ProjectorSceneInput
{
    /// <summary>The session.</summary>
    public required SessionSnapshot Snapshot { get; init; }

    /// <summary>Time since the last shot came in; null when there was none, or nobody knows.</summary>
    public TimeSpan? SinceShot { get; init; }

    /// <summary>Whether the coach has cleared the result of the last shot.</summary>
    public bool Cleared { get; init; }

    /// <summary>The colours.</summary>
    public Theme Theme { get; init; } = ThemeLibrary.Default;

    /// <summary>Where the bowler stands.</summary>
    public BowlerView View { get; init; } = BowlerView.Default;

    /// <summary>How long a result, or the news that a block is over, stays on the lane.</summary>
    public TimeSpan ResultFor { get; init; } = TimeSpan.FromSeconds(12);

    /// <summary>Whether the way of the ball is drawn.</summary>
    public bool ShowsTrail { get; init; } = true;

    /// <summary>Whether the last shot's result is still to be seen.</summary>
    internal bool ResultIsFresh => !Cleared && SinceShot is { } since && since < ResultFor;
}
