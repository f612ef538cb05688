using System.CommandLine;
using System.Security.Cryptography;
using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Takes recorded shots into the record, and proposes mappings for other programs' files.</summary>
internal static class ShotCommands
{
    public static Command Create(UserConsole console) => new("shots", "Import recorded shots, or propose a mapping for another program's file.") { Import(console), Map(console) };

    private static Command Import(UserConsole console)
    {
        var file = new Argument<string>("file") { Description = "The shots, CSV (docs/shots.md).", HelpName = "FILE" };
        var drill = CommonOptions.Drill(required: true);
        var options = new SessionOptions();
        var (map, json) = (CommonOptions.Map(), CommonOptions.Json());
        var command = new Command("import", "Grade recorded shots by a drill and keep them as a session.") { file, drill, map, json };
        foreach (var option in options.All)
        {
            command.Options.Add(option);
        }

        command.SetAction(async (parsed, _) =>
        {
            var path = parsed.GetValue(file)!;
            var source = new DrillLibrary(DataPlace.OwnDrills(parsed)).Read(parsed.GetValue(drill)!);
            var lane = LaneFile.Read(parsed.GetValue(options.Lane));
            await using var stream = UserFiles.OpenRead(path);
            if (!stream.CanSeek)
            {
                throw new UserException($"{path}: cannot be read twice, as an import needs to; save it as a file first");
            }

            var hash = Convert.ToHexStringLower(await SHA256.HashDataAsync(stream, CancellationToken.None).ConfigureAwait(false));
            stream.Position = 0;
            var settings = CsvFiles.Settings(lane, parsed.GetValue(options.Hand), parsed.GetValue(map));
            using var items = CsvShots.Read(stream, path, settings).GetEnumerator();
            var first = FirstShots.Of(items, parsed.GetValue(options.Bowler));
            if (!first.Any)
            {
                throw UserException.Of(first.AndTheRest().OfType<FeedItem.Unreadable>().Select(item => item.Problem.ToString()).Append($"{path}: no shot in it could be read; nothing was stored"));
            }

            ISessionView view = parsed.GetValue(json) ? new ImportJsonView(console) : new TerminalView(console);
            await using var live = await LiveSession.OpenAsync(DataPlace.Named(parsed), parsed.GetValue(options.Station), view, recorded: true).ConfigureAwait(false);
            if (await live.LeftOpenAsync().ConfigureAwait(false) is { } left)
            {
                throw new UserException($"station {live.Station.Number} was left with session {left.Setup.SessionId} open: end it first (run --end-open), or import on another station (--station)");
            }

            var bowler = parsed.GetValue(options.Bowler) ?? first.Bowler ?? "Guest";
            var known = await live.Store.FindBowlerAsync(bowler, live.Stopping).ConfigureAwait(false);
            var setup = options.Setup(parsed, source, bowler, known, simulated: false, live.Clock);
            setup = setup with
            {
                // The same file by the same drill for the same bowler is the same import.
                SessionId = $"import-{hash[..12]}-{source.Hash[..6]}-{DrillHash.Of(System.Text.Encoding.UTF8.GetBytes(setup.Bowler.ToUpperInvariant()))[..6]}",
                Hand = parsed.GetValue(options.Hand) ?? first.Hand ?? setup.Hand,
                At = first.Time ?? setup.At,
            };
            if (await live.Store.FindAsync(setup.SessionId, live.Stopping).ConfigureAwait(false) is not null)
            {
                throw new UserException($"{path}: was imported before with this drill, as session {setup.SessionId}; nothing was changed");
            }

            return await TakeAsync(console, live, setup, source, path, first.AndTheRest()).ConfigureAwait(false);
        });
        return command;
    }

    private static async Task<int> TakeAsync(
        UserConsole console, LiveSession live, SessionSetup setup, DrillSource source, string path, IEnumerable<FeedItem> items)
    {
        var at = setup.At;
        var (taken, repeated, leftOver, problems) = (0, 0, 0, 0);
        await live.StartAsync(setup, source, at).ConfigureAwait(false);
        foreach (var item in items)
        {
            if (item is FeedItem.Unreadable unreadable)
            {
                problems++;
                console.Error.WriteLine(unreadable.Problem);
            }
            else if (item is FeedItem.ShotRead read && ShotOwner.WhyNotOf(setup, read) is { } why)
            {
                problems++;
                console.Error.WriteLine(new FileProblem(path, read.Line, "", why, "shots of the session's bowler and hand"));
            }
            else
            {
                var shot = ((FeedItem.ShotRead)item).Shot;
                if (live.Station.Snapshot.Phase != SessionPhase.Ended)
                {
                    at = shot.Time ?? at;
                    await EndWhatIsOverAsync(live, at).ConfigureAwait(false);
                }

                if (live.Station.Snapshot.Phase == SessionPhase.Ended)
                {
                    leftOver++;
                    continue;
                }

                var reply = await live.FollowAsync(new SessionInput.ShotThrown(at, shot)).ConfigureAwait(false);
                taken += reply is StationReply.Kept ? 1 : 0;
                repeated += reply is StationReply.TakenBefore ? 1 : 0;
            }
        }

        if (live.Station.Snapshot.Phase != SessionPhase.Ended)
        {
            await live.FollowAsync(new SessionInput.End(at, "the shots of the file ran out before the drill did")).ConfigureAwait(false);
        }

        await live.SummariseAsync().ConfigureAwait(false);
        console.Error.WriteLine($"{Words.Count(taken, "shot")} taken{(repeated > 0 ? $", {repeated} came twice, taken once" : "")}{(leftOver > 0 ? $", {leftOver} left over when the drill was done" : "")}{(problems > 0 ? $", {Words.Count(problems, "problem")} (see above)" : "")}");
        return taken == 0 ? ExitCodes.BadInput : ExitCodes.Ok;
    }

    /// <summary>A block whose minutes were over before the shot ends before it, as on a station and in a replay.</summary>
    private static async Task EndWhatIsOverAsync(LiveSession live, DateTimeOffset at)
    {
        if (live.Station.Snapshot is { Block.Until.Minutes: not null })
        {
            await live.FollowAsync(new SessionInput.ClockTick(at)).ConfigureAwait(false);
        }
    }

    private static Command Map(UserConsole console)
    {
        var file = new Argument<string>("file") { Description = "A CSV file with headings of its own.", HelpName = "FILE" };
        var output = new Option<string?>("--out") { Description = "Save the mapping here; without it it is printed.", HelpName = "FILE" };
        var json = new Option<bool>("--json") { Description = "Print the mapping and what is open as one JSON document." };
        var command = new Command("map", "Propose a mapping from a file's headings; check it before you use it.") { file, output, json };
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(file)!;
            using var reader = new StreamReader(UserFiles.OpenRead(path));
            var read = CsvMappingProposal.ForFile(reader, path);
            var proposal = read.Value ?? throw UserException.Of(read.Problems);
            if (parsed.GetValue(output) is { } target)
            {
                UserFiles.WriteAllText(target, proposal.Json);
            }

            if (parsed.GetValue(json))
            {
                Json.Print(console, new { Mapping = System.Text.Json.Nodes.JsonNode.Parse(proposal.Json), proposal.Unrecognised, proposal.Questions });
                return ExitCodes.Ok;
            }

            if (parsed.GetValue(output) is null)
            {
                console.Out.WriteLine(proposal.Json.TrimEnd());
            }

            foreach (var question in proposal.Questions)
            {
                console.Error.WriteLine($"please check: {question}");
            }

            if (!proposal.Mapping.Columns.AsEnumerable().Any(column => column.Is
                is ShotColumn.LaydownBoard or ShotColumn.ArrowsBoard or ShotColumn.BreakpointBoard or ShotColumn.EntryBoard or ShotColumn.BoardAt))
            {
                console.Error.WriteLine("no heading was recognised as a place of the ball: say which it is in the mapping, such as \"is\": \"arrowsBoard\" (docs/shots.md)");
            }

            if (proposal.Unrecognised.Count > 0)
            {
                console.Error.WriteLine($"not recognised, and left out: {string.Join(", ", proposal.Unrecognised)}");
            }

            return ExitCodes.Ok;
        });
        return command;
    }
}
