using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>What the displays of a station are to show.</summary>
/// <param name="Snapshot">The session; the last known one while its source is away.</param>
/// <param name="Notice">What is wrong with the source, in one line; null when nothing is.</param>
public sealed record DisplayNews(SessionSnapshot Snapshot, string? Notice)
{
    /// <summary>Since when nothing was heard, in the time of the display's place; null when it is not known, or news comes.</summary>
    public DateTimeOffset? AwaySince { get; init; }

    /// <summary>Whether two pictures show the same moment of the same lane, names and turn included.</summary>
    public static bool IsSame(SessionSnapshot one, SessionSnapshot other) =>
        one.Setup?.SessionId == other.Setup?.SessionId && one.Version == other.Version && one.NameOnScreen == other.NameOnScreen && one.Turns == other.Turns;
}
