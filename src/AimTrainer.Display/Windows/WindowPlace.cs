using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>Where a window is put.</summary>
/// <param name="Borderless">Whether it covers a monitor without a border; else it is an ordinary window.</param>
/// <param name="X">Its left edge on the desktop.</param>
/// <param name="Y">Its upper edge.</param>
/// <param name="Size">Its size.</param>
/// <param name="Monitor">The monitor it is on; null when there is none.</param>
/// <param name="Missing">The name of the monitor that it should cover and cannot; null when it is where it should be.</param>
public sealed record WindowPlace(bool Borderless, int X, int Y, PictureSize Size, MonitorInfo? Monitor, string? Missing)
{
    // Below this nobody could take hold of the window again.
    private const int Least = 160;

    /// <summary>
    /// The place for a wish, with the monitors there are. While its monitor is away the window is an ordinary one on the primary
    /// monitor: to cover that would hide what the coach works with.
    /// </summary>
    public static WindowPlace For(WindowWish wish, ValueList<MonitorInfo> monitors)
    {
        if (wish.Covers?.Find(monitors) is { } wanted)
        {
            return new WindowPlace(true, wanted.X, wanted.Y, wanted.Mode, wanted, null);
        }

        if (monitors.Count == 0)
        {
            return new WindowPlace(false, 0, 0, wish.WindowedSize, null, wish.Covers?.Name);
        }

        var primary = monitors[0];
        var size = new PictureSize(Fitting(wish.WindowedSize.Width, primary.Mode.Width), Fitting(wish.WindowedSize.Height, primary.Mode.Height));
        return new WindowPlace(
            false,
            primary.X + ((primary.Mode.Width - size.Width) / 2),
            primary.Y + ((primary.Mode.Height - size.Height) / 2),
            size,
            primary,
            wish.Covers?.Name);
    }

    private static int Fitting(int wished, int there) => Math.Max(Least, Math.Min(wished, there * 9 / 10));
}
