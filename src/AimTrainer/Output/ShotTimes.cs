using AimTrainer.Domain;

namespace AimTrainer.Output;

/// <summary>When shots were thrown.</summary>
internal static class ShotTimes
{
    /// <summary>What the source says; for a shot taken live the moment it came in; unknown for one from a file that does not say.</summary>
    public static DateTimeOffset? ThrownAt(this GradedShot shot) => shot.Shot.Time ?? (shot.Shot.Source == ShotSource.File ? null : shot.At);
}
