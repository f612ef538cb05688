using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Domain;
using AimTrainer.Output;

namespace AimTrainer.Doctor;

/// <summary>Looks at what a display needs. A host without displays needs none of it, so nothing here fails. On the main thread.</summary>
/// <param name="place">The data folder, which holds the maps.</param>
/// <param name="clock">The time.</param>
internal sealed class DisplayDoctor(string place, TimeProvider clock)
{
    private const string OnlyDisplays = "only a machine with displays needs it";

    public IReadOnlyList<DoctorLine> Look()
    {
        var lines = new List<DoctorLine> { Gl() };
        var monitors = Monitors(lines);
        lines.AddRange(Maps(monitors));
        lines.Add(Sound());
        return lines;
    }

    private static DoctorLine Gl()
    {
        var opened = EglSurface.Open(new PictureSize(64, 64));
        using var surface = opened.Surface;
        return surface is not null ? DoctorLine.Ok("drawing", surface.Driver) : DoctorLine.Warn("drawing", opened.Problem!, OnlyDisplays);
    }

    private static ValueList<MonitorInfo>? Monitors(List<DoctorLine> lines)
    {
        var start = WindowSystem.Start();
        using var system = start.System;
        if (system is null)
        {
            lines.Add(DoctorLine.Warn("monitors", start.Problem!, $"{OnlyDisplays}; start displays in a desktop session"));
            return null;
        }

        var all = system.Monitors.All;
        lines.Add(all.Count > 0 ? DoctorLine.Ok("monitors", string.Join(", ", all.AsEnumerable().Select(one => $"{one.Name} {one.Mode.Width}x{one.Mode.Height}")))
            : DoctorLine.Warn("monitors", "none is connected", "connect and switch on the screen or projector"));
        return all;
    }

    private IEnumerable<DoctorLine> Maps(ValueList<MonitorInfo>? monitors)
    {
        var store = new MapStore(Path.Combine(place, "maps"), clock);
        var modes = (monitors?.AsEnumerable() ?? []).Select(one => new MonitorMode(one.Name, one.Mode, one.RefreshHertz)).ToList();
        var stations = store.Newest().AsEnumerable().Select(load => load.Place.Station).Distinct().ToList();
        if (stations.Count == 0)
        {
            yield return DoctorLine.Ok("maps", "no projector is calibrated on this machine");
        }

        foreach (var load in stations.SelectMany(station => (monitors is null ? store.Newest().AsEnumerable().Where(one => one.Place.Station == station) : store.LoadAll(station, modes).AsEnumerable())))
        {
            var name = $"map of station {load.Place.Station}, {load.Place.Projector}";
            var said = string.Join("; ", load.Broken.AsEnumerable().Select(problem => problem.ToString()).Append(load.Why).Where(text => text.Length > 0));
            yield return load.Map is null ? DoctorLine.Warn(name, said, "this projector shows no target until it is calibrated again: aimtrainer calibrate")
                : said.Length > 0 ? DoctorLine.Warn(name, said, "look at it with: aimtrainer calibrate check")
                : DoctorLine.Ok(name, monitors is null ? "can be read; whether it fits its monitor cannot be told without one" : "fits its monitor");
        }
    }

    private DoctorLine Sound()
    {
        var listed = SoundDevices.OfThisMachine(clock).List();
        return listed.Problem is { } problem ? DoctorLine.Warn("sound", problem, "only sessions with sound need it")
            : listed.Devices.Count == 0 ? DoctorLine.Warn("sound", "no device", "only sessions with sound need it")
            : DoctorLine.Ok("sound", Words.Count(listed.Devices.Count, "device"));
    }
}
