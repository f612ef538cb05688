using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;
using Spectre.Console;

namespace AimTrainer.Commands;

/// <summary>Lists, shows and exports stored sessions.</summary>
internal static class SessionCommands
{
    public static Command Create() => new("sessions", "List, show and export stored sessions.") { List(), Show(), Export() };

    private static Command List()
    {
        var bowler = new Option<string?>("--bowler") { Description = "Only this bowler's.", HelpName = "NAME" };
        var limit = CommonOptions.Whole("--limit", "At most so many, the newest first.", 1, 1_000_000, 100);
        var json = CommonOptions.Json();
        var command = new Command("list", "Stored sessions, newest first.") { bowler, limit, json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var store = StoreForReading.Open(DataPlace.Named(parsed));
            var filter = new SessionFilter { Bowler = parsed.GetValue(bowler), Limit = parsed.GetValue(limit) };
            var sessions = await store.ListAsync(filter, cancellationToken).ConfigureAwait(false);
            if (parsed.GetValue(json))
            {
                Json.Print(sessions);
            }
            else
            {
                Print(sessions);
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command Show()
    {
        var json = CommonOptions.Json();
        var id = Id();
        var command = new Command("show", "A session: its blocks, figures and notes.") { id, json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var store = StoreForReading.Open(DataPlace.Named(parsed));
            var (setup, drill, record) = await ReadAsync(store, parsed.GetValue(id)!, cancellationToken).ConfigureAwait(false);
            if (parsed.GetValue(json))
            {
                Console.Out.WriteLine(AsJson(setup, drill, record));
            }
            else
            {
                new TerminalView(Console.Out).Record(setup, drill, record);
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command Export()
    {
        var id = Id();
        var format = new Option<string>("--format") { Description = "csv: the shots, to be read again (docs/shots.md). json: everything.", DefaultValueFactory = _ => "csv", HelpName = "csv|json" };
        format.AcceptOnlyFromAmong("csv", "json");
        var output = new Option<string?>("--out") { Description = "The file to write; without it standard output.", HelpName = "FILE" };
        var json = new Option<bool>("--json") { Description = "The same as --format json." };
        var command = new Command("export", "A session as a file for other programs.") { id, format, output, json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var store = StoreForReading.Open(DataPlace.Named(parsed));
            var (setup, drill, record) = await ReadAsync(store, parsed.GetValue(id)!, cancellationToken).ConfigureAwait(false);
            var text = parsed.GetValue(json) || parsed.GetValue(format) == "json"
                ? AsJson(setup, drill, record) + "\n"
                : ShotsAsCsv(setup, record);
            if (parsed.GetValue(output) is { } file)
            {
                UserFiles.WriteAllText(file, text);
                Console.Error.WriteLine($"{file}: written");
            }
            else
            {
                Console.Out.Write(text);
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    private static Argument<string> Id() => new("session") { Description = "The session's id (see: sessions list), or last.", HelpName = "ID|last" };

    private static async Task<(SessionSetup Setup, DrillScript Drill, SessionRecord Record)> ReadAsync(
        ISessionStore store, string id, CancellationToken cancellationToken)
    {
        if (id == "last")
        {
            var newest = await store.ListAsync(new SessionFilter { Limit = 1 }, cancellationToken).ConfigureAwait(false);
            id = newest.Count > 0 ? newest[0].SessionId : throw new UserException("no session is stored here yet");
        }

        var stored = await store.FindAsync(id, cancellationToken).ConfigureAwait(false)
            ?? throw new UserException($"{id}: no such session; see: aimtrainer sessions list");
        var drill = DrillReader.Read($"drill of session {id}", Encoding.UTF8.GetBytes(stored.DrillJson));
        var record = await SessionReader.RecordAsync(store, id, cancellationToken).ConfigureAwait(false);
        return (stored.Setup, drill.Value ?? throw UserException.Of(drill.Problems), record);
    }

    private static string AsJson(SessionSetup setup, DrillScript drill, SessionRecord record)
    {
        using var buffer = new MemoryStream();
        using (var writer = new Utf8JsonWriter(buffer, Json.Indented))
        {
            RecordJson.Write(writer, setup, drill, record, null);
        }

        return Encoding.UTF8.GetString(buffer.ToArray());
    }

    private static string ShotsAsCsv(SessionSetup setup, SessionRecord record)
    {
        var shots = record.Blocks.AsEnumerable().SelectMany(block => block.Shots).Where(shot => shot.Shot.VoidReason is null).Select(shot => shot.Shot.Shot);
        using var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        CsvShotWriter.Write(text, shots, setup.Bowler, setup.Hand);
        return text.ToString();
    }

    private static void Print(ValueList<SessionListing> sessions)
    {
        var table = new Table().Border(TableBorder.Simple).AddColumns("session", "started (UTC)", "bowler", "drill", "shots", "points", "state");
        foreach (var session in sessions)
        {
            table.AddRow(
                Markup.Escape(session.SessionId),
                session.StartedAt.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture),
                Markup.Escape(session.Simulated ? $"{session.Bowler} (simulated)" : session.Bowler),
                Markup.Escape(session.DrillName),
                $"{session.Shots}",
                $"{session.Points}",
                session.Ended ? "over" : $"open on station {session.Station}");
        }

        Consoles.For(Console.Out).Write(table);
    }
}
