using System.CommandLine;
using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>The main job on an invented bowler: a drill is run, shots come in, everything is graded and kept.</summary>
internal static class DemoCommand
{
    private const string DefaultDrill = "two-point-line";
    private const string DefaultBowler = "Demo Bowler";
    private static readonly TimeSpan UnhurriedPace = TimeSpan.FromSeconds(0.7);

    public static Command Create(UserConsole console)
    {
        var drill = CommonOptions.Drill(required: false);
        drill.DefaultValueFactory = _ => DefaultDrill;
        var options = new SessionOptions();
        var sounds = new SoundOptions();
        var once = new Option<bool>("--once") { Description = "End after one session instead of asking for another." };
        var pace = CommonOptions.Number("--pace", "Seconds between shots; 0.7 at a terminal, else 0.", 0, 60, "SECONDS");
        var displays = new DisplayOptions();
        var json = CommonOptions.JsonLines();
        var command = new Command("demo", "Run a whole session of a simulated bowler, live, and show its record. Every shot is invented.")
        {
            drill, once, pace, json,
        };
        foreach (var option in options.All.Concat(displays.All).Concat(sounds.All))
        {
            command.Options.Add(option);
        }

        command.SetAction(async (parsed, cancellationToken) =>
        {
            var interactive = console.PersonTypes && !parsed.GetValue(once) && !parsed.GetValue(json);
            var source = new DrillLibrary(DataPlace.OwnDrills(parsed)).Read(parsed.GetValue(drill)!);
            ISessionView view = parsed.GetValue(json) ? new JsonLinesView(console) : new TerminalView(console);
            var between = parsed.GetValue(pace) is { } seconds ? TimeSpan.FromSeconds(seconds)
                : interactive && console.PersonReads ? UnhurriedPace : TimeSpan.Zero;
            var theme = DisplayThemes.Read(parsed.GetValue(displays.Theme));

            // Nobody watches a demo that runs through at once: pictures tell more than a window that flashes up.
            IReadOnlyList<DisplayWish> wishes = displays.Wishes(parsed) is { Count: > 0 } named ? named
                : interactive && console.PersonReads ? [new DisplayWish(DisplayKind.Overhead, null, true), new DisplayWish(DisplayKind.Projector, null, true)]
                : [];
            var maps = new DisplayMaps(DataPlace.Of(parsed), parsed.GetValue(options.Station), view.Notice);
            await using var windows = await DisplayWindows.OpenAsync(
                console, parsed.GetValue(options.Station), wishes, DisplayContents.Of(maps, theme, TimeProvider.System), mayCoverPrimary: false, view.Notice,
                DataPlace.Of(parsed)).ConfigureAwait(false);
            await using var live = await LiveSession.OpenAsync(DataPlace.Named(parsed), parsed.GetValue(options.Station), view, RecordOption.Of(parsed)).ConfigureAwait(false);
            windows.Watch(live.Station);
            await using var sound = await SessionSound.StartAsync(sounds, parsed, byDefault: console.PersonReads && between > TimeSpan.Zero, live, view.Notice).ConfigureAwait(false);
            if (!parsed.GetValue(json))
            {
                await SayWhatIsThereAsync(console, live).ConfigureAwait(false);
            }

            await using var pages = interactive ? await LiveConsole.OpenAsync(live, cancellationToken).ConfigureAwait(false) : null;
            if (pages is not null)
            {
                view.Notice($"The coach's console is at {pages.Address}, lane {live.Station.Number}; it stays until this demo ends (Ctrl+C)");
            }

            do
            {
                await RunOneAsync(live, parsed, options, source, between, cancellationToken).ConfigureAwait(false);
                if (!parsed.GetValue(json) && (wishes.Count == 0 || windows.Problem is not null))
                {
                    view.Notice(await DemoPictures.WriteAsync(console, live, theme, windows.Problem).ConfigureAwait(false));
                }
            }
            while (interactive && !live.Stopping.IsCancellationRequested && AsksForMore(console));

            return ExitCodes.Ok;
        });
        return command;
    }

    private static async Task RunOneAsync(
        LiveSession live, ParseResult parsed, SessionOptions options, DrillSource source, TimeSpan pace, CancellationToken cancellationToken)
    {
        // A demo that was cut off is ended, not gone on with: nobody waits for its other half.
        if (await live.LeftOpenAsync().ConfigureAwait(false) is { } left)
        {
            if (!left.Setup.Simulated)
            {
                throw new UserException(
                    $"lane {live.Station.Number} was left with a real session open ({left.Setup.DrillId}, {left.Setup.Bowler}), and a demo would end it: "
                    + $"go on with it (aimtrainer run --go-on), or show the demo on another lane (demo --station {live.Station.Number + 1})", ExitCodes.Failed);
            }

            await live.GoOnAsync(left).ConfigureAwait(false);
            await live.FollowAsync(new SessionInput.End(live.Clock.GetUtcNow(), "cut off; ended at the next start")).ConfigureAwait(false);
        }

        var setup = options.Setup(parsed, source, parsed.GetValue(options.Bowler) ?? DefaultBowler, null, simulated: true, live.Clock);
        await live.StartAsync(setup, source).ConfigureAwait(false);
        using var linked = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken, live.Stopping);
        await live.PumpAsync(SimulatedFeeds.For(live, pace), linked.Token).ConfigureAwait(false);
        await live.SummariseAsync().ConfigureAwait(false);
    }

    private static async Task SayWhatIsThereAsync(UserConsole console, LiveSession live)
    {
        var before = await live.Store.ListAsync(new SessionFilter { Limit = 5 }, live.Stopping).ConfigureAwait(false);
        if (before.Count > 0)
        {
            console.Out.WriteLine("Kept from before, newest first:");
            foreach (var session in before)
            {
                console.Out.WriteLine(
                    $"  {session.SessionId}  {session.DrillName}, {session.Bowler}{(session.Simulated ? " (simulated)" : "")}: "
                    + $"{Words.Count(session.Shots, "shot")}, {Words.Count(session.Points, "point")}");
            }

            console.Out.WriteLine();
        }
    }

    private static bool AsksForMore(UserConsole console)
    {
        console.Out.Write("Enter for another session, q and Enter to end: ");
        return console.In.ReadLine() is { } answer && !answer.Trim().StartsWith('q');
    }
}
