using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>
/// What is new of a station for a display elsewhere: the steps that it lacks, so that it works out the very picture that the host has
/// (<see cref="SessionFollower"/>). Taken as a whole, so that no picture in between is ever shown.
/// </summary>
public sealed record DisplayUpdate
{
    /// <summary>The session; null when the station has none.</summary>
    public string? SessionId { get; init; }

    /// <summary>How the session was set up, when it begins anew here; null when the display has it, and only lacks steps.</summary>
    public SessionSetup? Setup { get; init; }

    /// <summary>The drill's text, together with <see cref="Setup"/>.</summary>
    public string? DrillJson { get; init; }

    /// <summary>The steps, in order and without gaps.</summary>
    public ValueList<LogEntry> Steps { get; init; } = [];

    /// <summary>The bowler's name as screens may show it; null when nobody said, and without a session.</summary>
    public string? NameOnScreen { get; init; }

    /// <summary>Whose turn it is, where several bowlers share the lane, as screens may show it; null where one throws alone.</summary>
    public LaneTurns? Turns { get; init; }
}
