using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using System.Text;
using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;
using Spectre.Console;

namespace AimTrainer.Commands;

/// <summary>Lists, shows and exports stored sessions.</summary>
internal static class SessionCommands
{
    public static Command Create(UserConsole console) => new("sessions", "List, show and export stored sessions.") { List(console), Show(console), Export(console) };

    private static Command List(UserConsole console)
    {
        var bowler = CommonOptions.Name("--bowler", "Only this bowler's.");
        var limit = CommonOptions.Whole("--limit", "At most so many, the newest first.", 1, 1_000_000, 100);
        var json = CommonOptions.Json();
        var command = new Command("list", "Stored sessions, newest first.") { bowler, limit, json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var store = StoreForReading.Open(parsed);
            var filter = new SessionFilter { Bowler = parsed.GetValue(bowler), Limit = parsed.GetValue(limit) };
            var sessions = await store.ListAsync(filter, cancellationToken).ConfigureAwait(false);
            if (parsed.GetValue(json))
            {
                Json.Print(console, sessions);
            }
            else if (sessions.Count == 0)
            {
                console.Out.WriteLine(filter.Bowler is { } name ? $"no session of {name} is stored here" : "no session is stored here yet");
            }
            else
            {
                Print(console, sessions);
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command Show(UserConsole console)
    {
        var json = CommonOptions.Json();
        var id = Id();
        var command = new Command("show", "A session: its blocks, figures and notes.") { id, json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var store = StoreForReading.Open(parsed);
            var (setup, drill, record) = await ReadAsync(store, parsed.GetValue(id)!, cancellationToken).ConfigureAwait(false);
            if (parsed.GetValue(json))
            {
                console.Out.WriteLine(RecordJson.Of(setup, drill, record, null, indented: true));
            }
            else
            {
                new TerminalView(console).Record(
                    setup,
                    drill,
                    record,
                    string.Create(CultureInfo.InvariantCulture, $"session {setup.SessionId}, {setup.At.UtcDateTime:yyyy-MM-dd HH:mm} UTC, station {setup.Station}"));
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command Export(UserConsole console)
    {
        var id = Id();
        var format = new Option<string?>("--format")
        {
            Description = "csv: the shots, to be read again (docs/shots.md). json: everything.",
            DefaultValueFactory = _ => "csv",
            HelpName = "csv|json",
            CustomParser = ParseFormat,
        };
        var output = new Option<string?>("--out") { Description = "The file to write; without it standard output.", HelpName = "FILE" };
        var json = new Option<bool>("--json") { Description = "The same as --format json." };
        var command = new Command("export", "A session as a file for other programs.") { id, format, output, json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var store = StoreForReading.Open(parsed);
            var (setup, drill, record) = await ReadAsync(store, parsed.GetValue(id)!, cancellationToken).ConfigureAwait(false);
            var documents = new SessionDocuments();
            var text = parsed.GetValue(json) || parsed.GetValue(format) == "json"
                ? documents.Json(setup, drill, record) + "\n"
                : documents.ShotsAsCsv(setup, record);
            if (parsed.GetValue(output) is { } file)
            {
                UserFiles.WriteAllText(file, text);
                console.Error.WriteLine($"{file}: written");
            }
            else
            {
                console.Out.Write(text);
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    /// <summary>The argument that names a stored session.</summary>
    public static Argument<string> Id() => new("session") { Description = "The session's id (see: sessions list), or last.", HelpName = "ID|last" };

    /// <summary>A stored session by its id, or the newest for <c>last</c>.</summary>
    public static async Task<(SessionSetup Setup, DrillScript Drill, SessionRecord Record)> ReadAsync(
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

    private static string? ParseFormat(ArgumentResult result)
    {
        var format = result.Tokens[0].Value;
        if (format is not ("csv" or "json"))
        {
            result.AddError($"--format: found {format}; allowed: csv, json");
        }

        return format;
    }

    private static void Print(UserConsole console, ValueList<SessionListing> sessions)
    {
        var table = Consoles.Table(
            ("session", ColumnKind.Name), ("started (UTC)", ColumnKind.Name), ("bowler", ColumnKind.Words), ("drill", ColumnKind.Words),
            ("shots", ColumnKind.Number), ("points", ColumnKind.Number), ("state", ColumnKind.Words));
        foreach (var session in sessions)
        {
            table.AddRow(
                session.SessionId,
                session.StartedAt.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture),
                session.Simulated ? $"{session.Bowler} (simulated)" : session.Bowler,
                session.DrillName,
                $"{session.Shots}",
                $"{session.Points}",
                session.Ended ? "over" : $"open on station {session.Station}");
        }

        Consoles.Write(Consoles.For(console), table);
    }
}
