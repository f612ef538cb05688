using System.CommandLine;
using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>A live session on a station: shots typed, from a file, from a file that grows, or from the simulated bowler.</summary>
internal static class RunCommand
{
    public static Command Create(UserConsole console)
    {
        var drill = new Option<string?>("--drill") { Description = "A drill file, or the id of a shipped drill or one of your own (see: drill list).", HelpName = "FILE|ID" };
        var options = new SessionOptions();
        var sounds = new SoundOptions();
        var shots = new Option<string?>("--shots") { Description = "Take the shots from this CSV file (docs/shots.md).", HelpName = "FILE" };
        var follow = new Option<string?>("--follow") { Description = "Take the shots from a CSV file that another program keeps appending to.", HelpName = "FILE" };
        var simulate = new Option<bool>("--simulate") { Description = "Let the simulated bowler throw; the session is marked so." };
        var lines = LinesOption.Create();
        var map = CommonOptions.Map();
        var goOn = new Option<bool>("--go-on") { Description = "Go on with the session that this station was left with." };
        var endOpen = new Option<bool>("--end-open") { Description = "End the session that this station was left with, then start a new one." };
        var displays = new DisplayOptions();
        var json = CommonOptions.JsonLines();
        var command = new Command(
            "run",
            "Run a live session on a station. Type where the ball crossed, unless --shots, --follow or --simulate tells it, and a coach's words "
            + "(help lists them). What is printed is the coach's view: every shot, also where the drill tells the bowler nothing.")
        {
            drill, shots, follow, simulate, lines, map, goOn, endOpen, json,
        };
        foreach (var option in options.All.Concat(displays.All).Concat(sounds.All))
        {
            command.Options.Add(option);
        }

        command.Validators.Add(result =>
        {
            var sources = new[] { result.GetValue(shots) is not null, result.GetValue(follow) is not null, result.GetValue(simulate), result.GetResult(lines) is not null }.Count(given => given);
            if (sources > 1)
            {
                result.AddError("--shots, --follow, --simulate and --lines: give one of them, or none to type");
            }

            if (result.GetValue(goOn) && (result.GetValue(drill) is not null || result.GetValue(endOpen)))
            {
                result.AddError("--go-on goes on with the session and the drill that were left: leave --drill and --end-open out");
            }

            // A session keeps what it was set up with: taken in silence, they would put one bowler's shots under another's name.
            Option[] ofANewOne = [options.Bowler, options.Ball, options.Balls, options.Pattern, options.Breakpoint, options.Seed];
            if (result.GetValue(goOn) && ofANewOne.Where(option => result.GetResult(option) is not null).Select(option => option.Name).ToList() is { Count: > 0 } given)
            {
                result.AddError($"{string.Join(", ", given)}: --go-on goes on with the session as it was left: leave {(given.Count == 1 ? "it" : "them")} out");
            }

            if (!result.GetValue(goOn) && result.GetValue(drill) is null)
            {
                result.AddError("--drill is needed to start a session (or --go-on to go on with the one that was left)");
            }
        });
        command.SetAction(async (parsed, cancellationToken) =>
        {
            // Everything that can be wrong with the user's files is said before the record is touched.
            var source = parsed.GetValue(drill) is { } named && !parsed.GetValue(goOn) ? new DrillLibrary(DataPlace.OwnDrills(parsed)).Read(named) : null;
            var lane = LaneFile.Read(parsed.GetValue(options.Lane));
            var settings = CsvFiles.Settings(lane, parsed.GetValue(options.Hand), parsed.GetValue(map));
            if (parsed.GetValue(shots) is { } file)
            {
                await UserFiles.OpenRead(file).DisposeAsync().ConfigureAwait(false);
                if (!parsed.GetValue(goOn))
                {
                    // Whether anything can be read does not hang on the hand, which the record may know.
                    RefuseWithoutShots(file, settings with { Hand = settings.Hand ?? Hand.Right });
                }
            }

            var theme = DisplayThemes.Read(parsed.GetValue(displays.Theme));
            ISessionView view = parsed.GetValue(json) ? new JsonLinesView(console) : new TerminalView(console) { SaysWhatToAimAt = !parsed.GetValue(simulate) };
            var maps = new DisplayMaps(DataPlace.Of(parsed), parsed.GetValue(options.Station), view.Notice);
            await using var windows = await DisplayWindows.OpenAsync(
                console, parsed.GetValue(options.Station), displays.Wishes(parsed), DisplayContents.Of(maps, theme, TimeProvider.System), mayCoverPrimary: false, view.Notice,
                DataPlace.Of(parsed)).ConfigureAwait(false);
            if (windows.Problem is { } problem)
            {
                view.Notice($"{problem}; the session goes on without");
            }

            await using var live = await LiveSession.OpenAsync(DataPlace.Named(parsed), parsed.GetValue(options.Station), view, RecordOption.Of(parsed)).ConfigureAwait(false);
            windows.Watch(live.Station);
            live.ClearDisplays = windows.Problem is null && displays.Wishes(parsed).Count > 0 ? windows.News.Clear : null;

            // Without a person there, or with shots that come as fast as they can be read, there is sound only when it is asked for.
            var byDefault = console.PersonReads && parsed.GetValue(shots) is null && !parsed.GetValue(simulate);
            await using var sound = await SessionSound.StartAsync(sounds, parsed, byDefault, live, view.Notice).ConfigureAwait(false);
            await OpenAsync(live, parsed, options, source, parsed.GetValue(goOn), parsed.GetValue(endOpen), parsed.GetValue(simulate)).ConfigureAwait(false);

            // A file's inches and edges are read by the lane and the hand of the session, which may be one that was left.
            var setup = live.Station.Snapshot.Setup!;
            settings = settings with { Lane = setup.Lane, Hand = setup.Hand };
            using var linked = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken, live.Stopping);
            IShotFeed? feed = parsed.GetValue(shots) is { } whole ? new CsvFileFeed(whole, settings)
                : parsed.GetValue(follow) is { } growing ? new FollowedCsvFeed(growing, settings, new FollowSettings(), live.Clock)
                : parsed.GetValue(simulate) ? SimulatedFeeds.For(live, TimeSpan.Zero)
                : null;
            using var lineFeed = parsed.GetValue(lines) is { } address ? StationLines.Open(address, live, view, DataPlace.Of(parsed)) : null;
            Func<CancellationToken, Task>? pump = lineFeed is not null ? lineFeed.RunAsync
                : feed is not null ? stop => live.PumpAsync(feed, stop)
                : null;
            await TakeShotsAsync(console, live, view, pump, linked).ConfigureAwait(false);
            await FinishAsync(live, view).ConfigureAwait(false);
            return ExitCodes.Ok;
        });
        return command;
    }

    /// <summary>A file of which nothing can be read would leave an empty session open on the lane. A pipe can be read once only, and is not looked at.</summary>
    private static void RefuseWithoutShots(string file, CsvSettings settings)
    {
        using var stream = UserFiles.OpenRead(file);
        if (!stream.CanSeek)
        {
            return;
        }

        using var items = CsvShots.Read(stream, file, settings).GetEnumerator();
        var first = FirstShots.Of(items, null);
        if (!first.Any)
        {
            throw UserException.Of(first.AndTheRest().OfType<FeedItem.Unreadable>().Select(item => item.Problem.ToString())
                .Append($"{file}: no shot in it could be read; nothing was done"));
        }
    }

    private static async Task OpenAsync(
        LiveSession live, ParseResult parsed, SessionOptions options, DrillSource? source, bool goOn, bool endOpen, bool simulated)
    {
        var left = await live.LeftOpenAsync().ConfigureAwait(false);
        if (goOn)
        {
            left = left ?? throw new UserException($"station {live.Station.Number} was left with no open session: start one with --drill");
            if (parsed.GetValue(options.Hand) is { } hand && hand != left.Setup.Hand)
            {
                throw new UserException($"--hand: the session that was left is of a {Words.Of(left.Setup.Hand)}-hander; leave --hand out");
            }

            if (parsed.GetValue(options.Lane) is { } lane && LaneFile.Read(lane) != left.Setup.Lane)
            {
                throw new UserException($"--lane {lane}: the session that was left has another lane profile, and goes on with it; leave --lane out");
            }

            await live.GoOnAsync(left).ConfigureAwait(false);
            return;
        }

        if (left is not null && !endOpen)
        {
            throw new UserException(
                $"station {live.Station.Number} was left with session {left.Setup.SessionId} ({left.Setup.DrillId}, {left.Setup.Bowler}) open: "
                + "go on with it (--go-on) or end it first (--end-open)");
        }

        if (left is not null)
        {
            await live.GoOnAsync(left).ConfigureAwait(false);
            await live.FollowAsync(new SessionInput.End(live.Clock.GetUtcNow(), "ended before a new session")).ConfigureAwait(false);
        }

        var bowler = parsed.GetValue(options.Bowler) ?? (simulated ? "Simulated bowler" : "Guest");
        var known = simulated ? null : await live.Store.FindBowlerAsync(bowler, live.Stopping).ConfigureAwait(false);
        await live.StartAsync(options.Setup(parsed, source!, bowler, known, simulated, live.Clock), source!).ConfigureAwait(false);
    }

    /// <summary>Shots from the feed, and a coach's words from the terminal or a pipe beside it; an input without words ends nothing.</summary>
    private static async Task TakeShotsAsync(UserConsole console, LiveSession live, ISessionView view, Func<CancellationToken, Task>? feed, CancellationTokenSource stop)
    {
        var words = TerminalLoop.RunAsync(console, live, view, stop.Token);
        var pump = feed is null ? words : feed(stop.Token);
        try
        {
            if (await Task.WhenAny(words, pump).ConfigureAwait(false) == words && await words.ConfigureAwait(false))
            {
                await pump.ConfigureAwait(false);
            }

            await stop.CancelAsync().ConfigureAwait(false);
            await Task.WhenAll(words, pump).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // Left: the session stays open, the record is on disk.
        }
    }

    private static async Task FinishAsync(LiveSession live, ISessionView view)
    {
        await live.SummariseAsync().ConfigureAwait(false);
        if (live.Station.Snapshot.Phase != SessionPhase.Ended)
        {
            var elsewhere = live.RecordPlace == live.RecordFile ? "" : DataPlace.OptionFor(live.RecordPlace);
            view.Notice($"The session is left open: go on with aimtrainer run --go-on --station {live.Station.Number}{DataPlace.OptionFor(live.RecordFile)}{elsewhere}");
        }
    }
}
