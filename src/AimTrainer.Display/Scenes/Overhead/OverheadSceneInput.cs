using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>Everything that the scene of a screen above the lane hangs on.</summary>
public sealed record OverheadSceneInput
{
    /// <summary>Narrowest and widest screen: 5:4 to 32:9, width by height.</summary>
    public const double Narrowest = 1.25, Widest = 32.0 / 9;

    /// <summary>The session.</summary>
    public required SessionSnapshot Snapshot { get; init; }

    /// <summary>The screen's width in picture heights, 1.25 to 3.56.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Narrower or wider.</exception>
    public double Aspect
    {
        get;
        init => field = value is >= Narrowest and <= Widest
            ? value : throw new ArgumentOutOfRangeException(nameof(Aspect), value, FormattableString.Invariant($"allowed: {Narrowest} to {Widest:0.00}"));
    }

    = 16.0 / 9;

    /// <summary>Time since the last shot came in; null when there was none, or nobody knows.</summary>
    public TimeSpan? SinceShot { get; init; }

    /// <summary>Whether the coach has cleared the result of the last shot.</summary>
    public bool Cleared { get; init; }

    /// <summary>The colours.</summary>
    public Theme Theme { get; init; } = ThemeLibrary.Default;

    /// <summary>How long a result stays; null keeps it until the next shot.</summary>
    public TimeSpan? ResultFor { get; init; }

    /// <summary>Whether the last shot's result is still to be seen.</summary>
    internal bool ResultIsFresh => !Cleared && (ResultFor is not { } limit || (SinceShot is { } since && since < limit));
}
