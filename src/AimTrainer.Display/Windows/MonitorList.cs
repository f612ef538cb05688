using System.Globalization;
using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>The monitors there are; looked at again by <see cref="Refresh"/>, which costs no allocation while nothing changes.</summary>
public sealed class MonitorList
{
    private readonly Glfw _glfw;
    private readonly List<Mark> _marks = [];

    internal MonitorList(Glfw glfw)
    {
        _glfw = glfw;
        Refresh();
    }

    /// <summary>The primary one first, as the system orders them. Empty when none is connected.</summary>
    public ValueList<MonitorInfo> All { get; private set; } = [];

    /// <summary>Looks at the monitors again.</summary>
    /// <returns>Whether anything changed: one came, one went, or one has another place or mode.</returns>
    public bool Refresh()
    {
        var handles = _glfw.Monitors();
        var same = handles.Length == _marks.Count;
        for (var i = 0; same && i < handles.Length; i++)
        {
            same = MarkOf(handles[i]) == _marks[i];
        }

        if (same)
        {
            return false;
        }

        _marks.Clear();
        var found = new List<MonitorInfo>();
        foreach (var handle in handles)
        {
            var mark = MarkOf(handle);
            _marks.Add(mark);

            // A monitor that is being unplugged has no mode left: it is as good as gone.
            if (mark.Mode is { Width: > 0, Height: > 0 } mode)
            {
                var (width, height) = _glfw.MonitorMillimetres(handle);
                found.Add(new MonitorInfo(
                    found.Count + 1, _glfw.MonitorName(handle), mark.X, mark.Y, new PictureSize(mode.Width, mode.Height), mode.RefreshRate, width, height));
            }
        }

        All = MonitorInfo.ToldApart(found).ToValueList();
        return true;
    }

    /// <summary>Whether a monitor was plugged in or out since <see cref="Refresh"/>; costs next to nothing.</summary>
    internal bool OneCameOrWent()
    {
        var handles = _glfw.Monitors();
        if (handles.Length != _marks.Count)
        {
            return true;
        }

        for (var i = 0; i < handles.Length; i++)
        {
            if (handles[i] != _marks[i].Handle)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The monitor that a user means by its number or its name.</summary>
    /// <param name="all">The monitors there are.</param>
    /// <param name="wanted">A number from 1, or a name without regard to case.</param>
    /// <returns>The monitor, or what was found and what is allowed.</returns>
    public static (MonitorInfo? Monitor, string? Problem) Choose(ValueList<MonitorInfo> all, string wanted)
    {
        if (all.Count == 0)
        {
            return (null, $"monitor {wanted}: no monitor is connected");
        }

        var byName = all.AsEnumerable().FirstOrDefault(monitor => string.Equals(monitor.Name, wanted, StringComparison.OrdinalIgnoreCase));
        var byNumber = int.TryParse(wanted, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? all.AsEnumerable().FirstOrDefault(monitor => monitor.Number == number) : null;
        return (byName ?? byNumber) is { } monitor
            ? (monitor, null)
            : (null, $"monitor: found {wanted}; allowed: {string.Join(", ", all.AsEnumerable().Select(known => $"{known.Number} ({known.Name})"))}");
    }

    private Mark MarkOf(nint handle)
    {
        var (x, y) = _glfw.MonitorPosition(handle);
        return new Mark(handle, x, y, _glfw.MonitorMode(handle));
    }

    private readonly record struct Mark(nint Handle, int X, int Y, GlfwVideoMode Mode)
    {
        // The generated one makes a comparer at its first use, in the middle of a session.
        public bool Equals(Mark other) =>
            Handle == other.Handle && X == other.X && Y == other.Y
            && Mode.Width == other.Mode.Width && Mode.Height == other.Mode.Height && Mode.RefreshRate == other.Mode.RefreshRate;

        public override int GetHashCode() => HashCode.Combine(Handle, X, Y);
    }
}
