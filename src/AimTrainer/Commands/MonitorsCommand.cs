using System.CommandLine;
using System.Globalization;
using AimTrainer.Display;
using AimTrainer.Domain;
using AimTrainer.Output;
using Spectre.Console;

namespace AimTrainer.Commands;

/// <summary>Lists the monitors and projectors of this machine, as --monitor names them.</summary>
internal static class MonitorsCommand
{
    public static Command Create(UserConsole console)
    {
        var json = CommonOptions.Json();
        var command = new Command("monitors", "The monitors and projectors of this machine, as --monitor, --projector and --overhead name them.") { json };
        command.SetAction(async (parsed, _) =>
        {
            var monitors = await console.MainThread.DoAsync(Look).ConfigureAwait(false);
            if (parsed.GetValue(json))
            {
                Json.Print(console, monitors.AsEnumerable().Select(Described));
            }
            else if (monitors.Count == 0)
            {
                console.Out.WriteLine("no monitor is connected");
            }
            else
            {
                Print(console, monitors);
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    private static ValueList<MonitorInfo> Look()
    {
        var start = WindowSystem.Start();
        using var system = start.System ?? throw new UserException(start.Problem!, ExitCodes.Failed);
        return system.Monitors.All;
    }

    private static object Described(MonitorInfo monitor) => new
    {
        monitor.Number,
        monitor.Name,
        XPixels = monitor.X,
        YPixels = monitor.Y,
        WidthPixels = monitor.Mode.Width,
        HeightPixels = monitor.Mode.Height,
        RefreshHertz = Known(monitor.RefreshHertz),
        WidthMillimetres = Known(monitor.WidthMillimetres),
        HeightMillimetres = Known(monitor.HeightMillimetres),
    };

    private static int? Known(int value) => value > 0 ? value : null;

    private static void Print(UserConsole console, ValueList<MonitorInfo> monitors)
    {
        var table = Consoles.Table(
            ("number", ColumnKind.Number), ("name", ColumnKind.Name), ("picture", ColumnKind.Name), ("at", ColumnKind.Name), ("refresh", ColumnKind.Name),
            ("size", ColumnKind.Name));
        foreach (var monitor in monitors)
        {
            table.AddRow(
                monitor.Number.ToString(CultureInfo.InvariantCulture),
                Markup.Escape(monitor.Name),
                $"{monitor.Mode.Width}x{monitor.Mode.Height}",
                $"{monitor.X},{monitor.Y}",
                monitor.RefreshHertz > 0 ? $"{monitor.RefreshHertz} Hz" : "not said",
                monitor.WidthMillimetres > 0 ? $"{monitor.WidthMillimetres} x {monitor.HeightMillimetres} mm" : "not said");
        }

        Consoles.Write(Consoles.For(console), table);
    }
}
