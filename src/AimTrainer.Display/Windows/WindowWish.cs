using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>How a window is to be.</summary>
public sealed record WindowWish
{
    /// <summary>What stands in its title bar and on the task list.</summary>
    public required string Title { get; init; }

    /// <summary>The monitor that it covers, without a border; null for an ordinary window.</summary>
    public MonitorKey? Covers { get; init; }

    /// <summary>Its size as an ordinary window.</summary>
    public PictureSize WindowedSize { get; init; } = new(1280, 720);

    /// <summary>Whether the mouse pointer is hidden over it: light on a lane draws the eye.</summary>
    public bool HidesPointer { get; init; }
}
