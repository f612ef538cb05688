namespace AimTrainer.Display;

/// <summary>
/// What a monitor is found again by after it was unplugged: its name, and when several have that name which of them, counted from the
/// left (then from above).
/// </summary>
/// <param name="Name">The system's name.</param>
/// <param name="Occurrence">From 1.</param>
public sealed record MonitorKey(string Name, int Occurrence)
{
    /// <summary>The key of a monitor among those there are.</summary>
    public static MonitorKey Of(MonitorInfo monitor, IEnumerable<MonitorInfo> all) =>
        new(monitor.Name, Named(monitor.Name, all).TakeWhile(other => other.Number != monitor.Number).Count() + 1);

    /// <summary>The monitor of this key, or null while there is none.</summary>
    public MonitorInfo? Find(IEnumerable<MonitorInfo> all) => Named(Name, all).ElementAtOrDefault(Occurrence - 1);

    private static IEnumerable<MonitorInfo> Named(string name, IEnumerable<MonitorInfo> all) =>
        all.Where(monitor => monitor.Name == name).OrderBy(monitor => monitor.X).ThenBy(monitor => monitor.Y);
}
