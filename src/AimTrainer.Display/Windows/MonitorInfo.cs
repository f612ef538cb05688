using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>A monitor (or a projector: to the system it is one) as the system describes it now.</summary>
/// <param name="Number">Counts the monitors from 1, the primary one first.</param>
/// <param name="Name">The system's name for it.</param>
/// <param name="X">Where its left edge lies on the desktop.</param>
/// <param name="Y">Where its upper edge lies on the desktop.</param>
/// <param name="Mode">The size of its picture.</param>
/// <param name="RefreshHertz">Pictures a second; 0 when the system does not say.</param>
/// <param name="WidthMillimetres">The width it says it has; 0 when it does not say, and for a projector without meaning.</param>
/// <param name="HeightMillimetres">Its height likewise.</param>
public sealed record MonitorInfo(int Number, string Name, int X, int Y, PictureSize Mode, int RefreshHertz, int WidthMillimetres, int HeightMillimetres)
{
    /// <summary>
    /// Which monitor a map is for: the name, and among several of one name (two projectors of one model) which of how many. With one of them
    /// unplugged nobody can say which is left, so this is then another name, and neither's map is used.
    /// </summary>
    public string NameForMaps { get; init; } = Name;

    /// <summary>The same monitors, with those of one name told apart from the left (then from above).</summary>
    public static IEnumerable<MonitorInfo> ToldApart(IReadOnlyCollection<MonitorInfo> all) => all.Select(monitor => all.Count(other => other.Name == monitor.Name) is > 1 and var alike
        ? monitor with { NameForMaps = FormattableString.Invariant($"{monitor.Name} ({MonitorKey.Of(monitor, all).Occurrence} of {alike})") }
        : monitor);
}
