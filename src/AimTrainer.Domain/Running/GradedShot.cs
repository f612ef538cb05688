using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>A shot, what it was thrown at, and what came of it.</summary>
public sealed record GradedShot
{
    /// <summary>Its number in the session, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>When it came in.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>What was observed.</summary>
    public required Shot Shot { get; init; }

    /// <summary>The run of the block it belongs to, as in <see cref="SessionEvent.BlockBegan"/>.</summary>
    public required int Run { get; init; }

    /// <summary>What it was thrown at.</summary>
    public required string Aim { get; init; }

    /// <summary>How each target was crossed.</summary>
    public required ValueList<TargetResult> Targets { get; init; }

    /// <summary>Whether the aim was held; null when that hangs on a crossing nobody measured.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.Never)]
    public required bool? Held { get; init; }

    /// <summary>Points of all targets.</summary>
    public required int Points { get; init; }

    /// <summary>Whether it counts as the same throw.</summary>
    public required Comparability Comparability { get; init; }

    /// <summary>In a comparison with which ball it was thrown, and whether it counts for it; else null.</summary>
    public ThrownBall? Compared { get; init; }

    /// <summary>Its launch angle, reported or computed; null when neither can be had.</summary>
    public LaunchAngle? LaunchAngle { get; init; }

    /// <summary>For a walking line the place it was thrown at, from 1; else 0.</summary>
    public int Place { get; init; }

    /// <summary>Why it does not count; null when it does.</summary>
    public string? VoidReason { get; init; }
}
