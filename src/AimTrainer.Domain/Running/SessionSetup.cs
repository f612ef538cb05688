using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>Everything that is fixed before the first shot: who throws what, where, at which drill.</summary>
public sealed record SessionSetup
{
    /// <summary>One of a kind among all sessions.</summary>
    public required string SessionId { get; init; }

    /// <summary>The station (lane) it runs on, from 1.</summary>
    public required int Station { get; init; }

    /// <summary>When it was set up.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The bowler's name in the records.</summary>
    public required string Bowler { get; init; }

    /// <summary>The hand the bowler throws with.</summary>
    public required Hand Hand { get; init; }

    /// <summary>The ball thrown unless a shot says otherwise.</summary>
    public string? Ball { get; init; }

    /// <summary>The balls of a comparison, one for each role that the drill names; empty for other drills.</summary>
    public ValueList<ChosenBall> Balls { get; init; } = [];

    /// <summary>The drill's id.</summary>
    public required string DrillId { get; init; }

    /// <summary>SHA-256 of the drill's bytes as they were used.</summary>
    public required string DrillHash { get; init; }

    /// <summary>The lane as it was described.</summary>
    public required LaneProfile Lane { get; init; }

    /// <summary>Seed for whatever the drill leaves to chance.</summary>
    public required ulong Seed { get; init; }

    /// <summary>The bowler's usual throw, as far as the record knows it.</summary>
    public Baseline Baseline { get; init; } = new();

    /// <summary>The bowler's recorded breakpoint.</summary>
    public Breakpoint? RecordedBreakpoint { get; init; }

    /// <summary>Length of the oil pattern, when somebody knows it.</summary>
    [JsonPropertyName("patternFeet")]
    public Feet? PatternLength { get; init; }

    /// <summary>Anything about the lane.</summary>
    public string? LaneNote { get; init; }

    /// <summary>Whether the bowler is the simulated one: such a session never counts as a person's record.</summary>
    public bool Simulated { get; init; }
}
