using System.CommandLine;
using System.Security.Cryptography;
using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;
using AimTrainer.Store.Sqlite;

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

        command.SetAction(async (parsed, cancellationToken) =>
        {
            var path = parsed.GetValue(file)!;
            var source = new DrillLibrary(DataPlace.OwnDrills(parsed)).Read(parsed.GetValue(drill)!);
            var lane = LaneFile.Read(parsed.GetValue(options.Lane));
            await using var stream = UserFiles.OpenRead(path);
            if (!stream.CanSeek)
            {
                throw new UserException($"{path}: cannot be read twice, as an import needs to; save it as a file first");
            }

            var hash = Convert.ToHexStringLower(await SHA256.HashDataAsync(stream, cancellationToken).ConfigureAwait(false));
            stream.Position = 0;
            var settings = CsvFiles.Settings(lane, parsed.GetValue(options.Hand), parsed.GetValue(map));
            using var items = CsvShots.Read(stream, path, settings).GetEnumerator();
            var first = FirstShots.Of(items, parsed.GetValue(options.Bowler));
            if (!first.Any)
            {
                throw UserException.Of(first.AndTheRest().OfType<FeedItem.Unreadable>().Select(item => item.Problem.ToString())
                    .Append($"{path}: no shot in it could be read; nothing was stored"));
            }

            using var folder = DataFolder.Open(DataPlace.Named(parsed));
            using var store = StoreForWriting.Open(parsed, folder);
            var bowler = parsed.GetValue(options.Bowler) ?? first.Bowler ?? "Guest";
            var known = await store.FindBowlerAsync(bowler, cancellationToken).ConfigureAwait(false);
            var setup = options.Setup(parsed, source, bowler, known, simulated: false, TimeProvider.System);
            setup = setup with
            {
                // The same file by the same drill for the same bowler is the same import.
                SessionId = $"import-{hash[..12]}-{source.Hash[..6]}-{DrillHash.Of(System.Text.Encoding.UTF8.GetBytes(setup.Bowler.ToUpperInvariant()))[..6]}",
                Hand = parsed.GetValue(options.Hand) ?? first.Hand ?? setup.Hand,
                At = first.Time ?? setup.At,
            };
            var stored = await store.FindAsync(setup.SessionId, cancellationToken).ConfigureAwait(false);
            if (stored is { Ended: true })
            {
                throw new UserException($"{path}: was imported before with this drill, as session {setup.SessionId}; nothing was changed");
            }

            // An import that was cut off goes on where it was: the same file by the same setup leads to the same steps.
            setup = stored?.Setup ?? setup;
            var opening = SessionCore.Open(setup, source.Script);
            var state = opening.State ?? throw UserException.Of(opening.Problems);
            var problems = 0;
            void Report(FileProblem problem)
            {
                problems++;
                console.Error.WriteLine(problem);
            }

            var steps = new List<LogEntry>();
            var outcome = Replay.Run(
                state, first.AndTheRest(), (input, events) => steps.Add(new LogEntry(steps.Count + 1, input, events)), Report, path);
            if (stored is null)
            {
                await store.CreateAsync(setup, source, cancellationToken).ConfigureAwait(false);
            }

            await KeepAsync(store, setup.SessionId, steps, cancellationToken).ConfigureAwait(false);
            var record = await SessionReader.RecordAsync(store, setup.SessionId, cancellationToken).ConfigureAwait(false);
            if (parsed.GetValue(json))
            {
                console.Out.WriteLine(RecordJson.Of(setup, source.Script, record, folder.DatabaseFile, indented: true));
            }
            else
            {
                new TerminalView(console).Record(setup, source.Script, record, $"session {setup.SessionId}, imported from {path}");
            }

            console.Error.WriteLine($"{path}: {Words.Count(outcome.Shots, "shot")} taken");
            outcome.Say(console, problems, path);
            return outcome.Shots == 0 ? ExitCodes.BadInput : ExitCodes.Ok;
        });
        return command;
    }

    private static async Task KeepAsync(ISessionStore store, string sessionId, List<LogEntry> steps, CancellationToken cancellationToken)
    {
        var kept = 0L;
        await foreach (var step in store.ReadLogAsync(sessionId, cancellationToken).ConfigureAwait(false))
        {
            kept = step.Sequence;
        }

        foreach (var step in steps.Where(step => step.Sequence > kept))
        {
            await store.AppendAsync(sessionId, step, cancellationToken).ConfigureAwait(false);
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
