using System.CommandLine;
using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Calibration by hand, in a window on the projector: marks are placed, and the check picture is looked at.</summary>
internal static class CalibrateWindowCommands
{
    /// <summary>Lets a command place marks when it is called by itself.</summary>
    public static void Place(Command command, UserConsole console)
    {
        var window = new WindowOptions();
        var name = Projector();
        var from = CommonOptions.Number("--from", "Where the part of the lane begins that this projector is to draw, in feet from the foul line;", -15, 60, "FEET");
        var to = CommonOptions.Number("--to", "Where it ends;", 0, 63, "FEET");
        var host = new Option<string?>("--host")
        {
            Description = "The console's address: then marks can be placed from its Projector page, on a phone, and by keys too. "
                + "A host with a passphrase wants a code that the coach makes there. Its emergency stop makes this window dark too.",
            HelpName = "URL",
        };
        foreach (var option in (Option[])[.. window.All, name, from, to, host])
        {
            command.Options.Add(option);
        }

        command.SetAction(async (parsed, cancellationToken) =>
        {
            var wish = window.Wish(parsed) ?? throw new UserException(
                "calibrate: say which projector, as --monitor MONITOR (see: aimtrainer monitors), or --windowed to try it out; aimtrainer calibrate --help lists the other ways");
            var place = Place(parsed.GetValue(window.Station), parsed.GetValue(name));
            var lane = LaneFile.Read(parsed.GetValue(window.Lane));
            var stretch = Stretch(parsed.GetValue(from), parsed.GetValue(to));
            if (MarkPlacing.WhyNot(lane, new FitSettings { Picture = new PictureSize(1920, 1080), LaneWidth = lane.Width, Stretch = stretch }) is { } why)
            {
                throw new UserException($"--from, --to: {why}");
            }

            var theme = DisplayThemes.Read(parsed.GetValue(window.Theme));
            var (task, store) = (new CalibrationTask(place, lane, stretch), CalibrationFiles.Store(parsed));
            var url = parsed.GetValue(host) is { } named ? HostOf(named) : null;
            await using var stops = new HostStops(url, DataPlace.Of(parsed), TimeProvider.System, console.Error.WriteLine);
            if (url is null)
            {
                return await new CalibrationRun(console, theme, DataPlace.Of(parsed)) { Opening = stops.BeginAsync }.PlaceAsync(task, wish, store, cancellationToken).ConfigureAwait(false);
            }

            using var link = await ProjectorLink.OpenAsync(url, () => AskCode(console), console.Error.WriteLine, TimeProvider.System, cancellationToken)
                .ConfigureAwait(false);
            var run = new CalibrationRun(console, theme, DataPlace.Of(parsed)) { Opening = stops.BeginAsync, Opened = link.Begin, Changed = link.Changed };
            try
            {
                return await run.PlaceAsync(task, wish, store, cancellationToken).ConfigureAwait(false);
            }
            finally
            {
                await link.CloseAsync().ConfigureAwait(false);
            }
        });
    }

    public static Command Check(UserConsole console)
    {
        var window = new WindowOptions();
        var command = new Command("check", "Show the check picture over the saved map: do its lines lie on the lane's own marks?");
        var host = new Option<string?>("--host")
        {
            Description = "The host of this lane, when it is another machine: its emergency stop makes this window dark too. Hosts that displays of this machine have a token of are known.",
            HelpName = "URL",
        };
        foreach (var option in (Option[])[.. window.All, host])
        {
            command.Options.Add(option);
        }

        command.SetAction(async (parsed, cancellationToken) =>
        {
            var wish = window.Wish(parsed) ?? throw new UserException("calibrate check: say which projector, as --monitor MONITOR (see: aimtrainer monitors), or --windowed");
            var lane = LaneFile.Read(parsed.GetValue(window.Lane));
            var maps = new DisplayMaps(DataPlace.Of(parsed), parsed.GetValue(window.Station), console.Error.WriteLine);
            await using var stops = new HostStops(parsed.GetValue(host) is { } named ? HostOf(named) : null, DataPlace.Of(parsed), TimeProvider.System, console.Error.WriteLine);
            var run = new CalibrationRun(console, DisplayThemes.Read(parsed.GetValue(window.Theme)), DataPlace.Of(parsed)) { Opening = stops.BeginAsync };
            return await run.CheckAsync(maps, parsed.GetValue(window.Station), lane, wish, cancellationToken).ConfigureAwait(false);
        });
        return command;
    }

    /// <summary>Puts the maps of a projector aside.</summary>
    public static Command Forget(UserConsole console)
    {
        var station = CommonOptions.Whole("--station", "The station (lane), 1 to 64.", 1, MapPlace.MostStation, 1);
        var name = Projector();
        var command = new Command("forget", "Put the maps of a projector aside that is no longer on the lane, or has another name.") { station, name };
        command.SetAction(parsed =>
        {
            var stored = CalibrationFiles.Store(parsed).Forget(Place(parsed.GetValue(station), parsed.GetValue(name)));
            console.Out.WriteLine(stored.File is { } file ? $"put aside: {file}" : throw new UserException(stored.Problem));
            return ExitCodes.Ok;
        });
        return command;
    }

    /// <summary>The option that names a projector.</summary>
    public static Option<string?> Projector()
    {
        var name = CommonOptions.Name("--name", "The projector's name; \"lane\" without it.");
        name.Aliases.Add("--projector");
        return name;
    }

    /// <summary>Which projector is meant.</summary>
    /// <exception cref="UserException">It cannot be named so.</exception>
    public static MapPlace Place(int station, string? name)
    {
        var place = new MapPlace(station, name ?? MapPlace.OnlyProjector);
        return place.Problem is { } problem ? throw new UserException($"--name: found {problem}") : place;
    }

    private static Uri HostOf(string url) => Uri.TryCreate(url, UriKind.Absolute, out var host) && (host.Scheme == Uri.UriSchemeHttp || host.Scheme == Uri.UriSchemeHttps)
        ? host
        : throw new UserException($"--host: found {url}; allowed: the console's address as aimtrainer serve prints it, such as {ConsoleHost.UsualUrl}");

    private static string? AskCode(UserConsole console)
    {
        if (console.PersonTypes)
        {
            console.Out.Write("Code from the coach (the console's Projector page makes one): ");
        }

        return console.In.ReadLine() is { } code && code.Trim().Length > 0 ? code.Trim() : null;
    }

    private static LaneStretch? Stretch(double? from, double? to)
    {
        if (from is null && to is null)
        {
            return null;
        }

        var (start, end) = (from ?? 0, to ?? LaneProfile.HeadPin.Value);
        return end > start
            ? new LaneStretch(Feet.FromFeet(start), Feet.FromFeet(end), default, default)
            : throw new UserException(FormattableString.Invariant($"--from, --to: found {start} to {end} ft; allowed: an end farther down the lane than the start"));
    }

    private sealed class WindowOptions
    {
        public Option<int> Station { get; } = CommonOptions.Whole("--station", "The station (lane), 1 to 64.", 1, MapPlace.MostStation, 1);

        public Option<string?> Monitor { get; } = new("--monitor")
        {
            Description = "The projector, which is a monitor to the system: its number or name (see: monitors).",
            HelpName = "MONITOR",
        };

        public Option<bool> Windowed { get; } = new("--windowed") { Description = "Use an ordinary window, to try it out; nothing is saved." };

        public Option<string?> Lane { get; } = CommonOptions.Lane();

        public Option<string?> Theme { get; } = DisplayOptions.OfTheme();

        public IEnumerable<Option> All => [Monitor, Station, Windowed, Lane, Theme];

        /// <summary>The window; null when none is named.</summary>
        public DisplayWish? Wish(ParseResult parsed)
        {
            var (monitor, windowed) = (parsed.GetValue(Monitor), parsed.GetValue(Windowed));
            return monitor is null && !windowed ? null
                : monitor is not null && windowed ? throw new UserException("--monitor, --windowed: give one of them; a window can be moved to any monitor by hand")
                : new DisplayWish(DisplayKind.Calibration, monitor, windowed);
        }
    }
}
