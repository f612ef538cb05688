using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>With which ball of a comparison a shot was thrown, which was due, and whether it counts.</summary>
public sealed record ThrownBall
{
    /// <summary>The ball that was due.</summary>
    public required string Due { get; init; }

    /// <summary>The ball that was thrown: the one that the shot names, else the one that was due.</summary>
    public required string Ball { get; init; }

    /// <summary>The role of the thrown ball; null when it is none of those compared.</summary>
    public string? Role { get; init; }

    /// <summary>Whether the shot itself named the ball; else it is taken for the one that was due.</summary>
    public required bool IsNamed { get; init; }

    /// <summary>Whether the reference ball's check of the lane was due.</summary>
    public required bool CheckWasDue { get; init; }

    /// <summary>Why it is no good throw of its ball; null when it is one.</summary>
    public string? NotGood { get; init; }

    /// <summary>Whether it counts as a good throw of the ball that was thrown.</summary>
    [JsonIgnore]
    public bool IsGood => NotGood is null;

    /// <summary>Whether another ball than the due one was thrown. It counts for the one that was thrown, and the due one stays due.</summary>
    [JsonIgnore]
    public bool IsOtherThanDue => Ball != Due;

    /// <summary>Whether it is the reference ball's check of the lane.</summary>
    [JsonIgnore]
    public bool IsCheck => CheckWasDue && !IsOtherThanDue;
}
