using AimTrainer.Display;
using AimTrainer.Domain;
using AimTrainer.Output;

namespace AimTrainer.Setup;

/// <summary>Gives each display its monitor.</summary>
internal static class DisplayMonitors
{
    /// <summary>The monitor that each wish covers; null for an ordinary window.</summary>
    /// <param name="wishes">The displays.</param>
    /// <param name="monitors">The monitors there are.</param>
    /// <param name="mayCoverPrimary">Whether a display that names no monitor may cover the primary one: not where somebody types.</param>
    /// <exception cref="UserException">A monitor is named that is not there, or twice.</exception>
    public static IReadOnlyList<MonitorKey?> For(IReadOnlyList<DisplayWish> wishes, ValueList<MonitorInfo> monitors, bool mayCoverPrimary)
    {
        var keys = new MonitorKey?[wishes.Count];
        var taken = new HashSet<int>();
        for (var i = 0; i < wishes.Count; i++)
        {
            if (wishes[i] is { Windowed: false, Monitor: { } named })
            {
                var (monitor, problem) = MonitorList.Choose(monitors, named);
                keys[i] = monitor is null ? throw new UserException($"{problem} (see: aimtrainer monitors)")
                    : taken.Add(monitor.Number) ? MonitorKey.Of(monitor, monitors)
                    : throw new UserException($"monitor: {named} is asked for twice; give each display its own (see: aimtrainer monitors)");
            }
        }

        for (var i = 0; i < wishes.Count; i++)
        {
            if (wishes[i] is { Windowed: false, Monitor: null })
            {
                var free = monitors.AsEnumerable().Where(monitor => !taken.Contains(monitor.Number)).ToList();
                var chosen = free.FirstOrDefault(monitor => monitor.Number > 1) ?? (mayCoverPrimary ? free.FirstOrDefault() : null);
                keys[i] = chosen is not null && taken.Add(chosen.Number) ? MonitorKey.Of(chosen, monitors) : null;
            }
        }

        return keys;
    }
}
