namespace AimTrainer.Motion;

/// <summary>What stays the same when a line walks across the arrows.</summary>
public enum WalkKeeps
{
    /// <summary>The farther target: the angle opens as the line moves in.</summary>
    Breakpoint,

    /// <summary>The launch angle: the farther target moves as the nearer does.</summary>
    Angle,
}
