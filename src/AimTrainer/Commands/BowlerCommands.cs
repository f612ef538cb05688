using System.CommandLine;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;
using AimTrainer.Store;
using AimTrainer.Store.Sqlite;
using AimTrainer.Web;

namespace AimTrainer.Commands;

/// <summary>A bowler's own data: as a file, and out of the record.</summary>
internal static class BowlerCommands
{
    public static Command Create(UserConsole console) =>
        new("bowler", "A bowler's own data: export it for the bowler, or erase it for good.") { Export(console), Erase(console) };

    private static Argument<string> Name() => new("name") { Description = "The bowler's name, without regard to case.", HelpName = "NAME" };

    private static Command Export(UserConsole console)
    {
        var name = Name();
        var output = new Option<string>("--out") { Description = "The zip file to write.", HelpName = "FILE", Required = true };
        var command = new Command("export", "Everything that is kept of a bowler, as one zip file: sessions, shots, logs, what was agreed, groups.") { name, output };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var place = DataPlace.Of(parsed);
            using var store = StoreForReading.Open(parsed);
            using var zip = new MemoryStream();
            var export = new BowlerExport(store, new SessionDocuments(), new PeopleRegister(place), new GroupRegister(place));
            var sessions = await export.WriteAsync(parsed.GetValue(name)!, zip, cancellationToken).ConfigureAwait(false)
                ?? throw new UserException($"{parsed.GetValue(name)}: nothing is kept of a bowler of this name; see: aimtrainer sessions list");
            UserFiles.WriteAllBytes(parsed.GetValue(output)!, zip.ToArray());
            console.Out.WriteLine($"{parsed.GetValue(output)}: {Words.Count(sessions, "session")} of {parsed.GetValue(name)}");
            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command Erase(UserConsole console)
    {
        var name = Name();
        var sure = new Option<string?>("--sure") { Description = "The same name once more, so that nobody is erased by a slip.", HelpName = "NAME" };
        var json = CommonOptions.Json();
        var command = new Command("erase", "Erase everything of a bowler for good, to the last byte of the record's file, and at the next sending at the chain. Backups are left: delete those yourself.") { name, sure, json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var bowler = parsed.GetValue(name)!;
            if (parsed.GetValue(sure) is not { } again || !BowlerName.Same(bowler, again))
            {
                throw new UserException($"--sure: found {parsed.GetValue(sure) ?? "none"}; allowed: the bowler's name once more (aimtrainer bowler erase \"{bowler}\" --sure \"{bowler}\")");
            }

            using var folder = DataFolder.Open(DataPlace.Named(parsed));
            if (RecordOption.Of(parsed) is null && !folder.HasRecord)
            {
                throw StoreForReading.NoRecord(folder);
            }

            // Brings an older record up to date first, so that every table of today is known.
            using var store = StoreForWriting.Open(parsed, folder);
            var place = folder.FolderPath;
            var erasing = new BowlerErasing(
                [], new RecordErasure(store, place, TimeProvider.System), new PeopleRegister(place), new GroupRegister(place), new ConsoleSettings { DataFolder = place }, TimeProvider.System);
            var (erased, why) = await erasing.EraseAsync(bowler, cancellationToken).ConfigureAwait(false);
            if (erased is null)
            {
                throw new UserException(why ?? $"{bowler}: nothing is kept of a bowler of this name; see: aimtrainer sessions list");
            }

            if (parsed.GetValue(json))
            {
                Json.Print(console, erased);
                return ExitCodes.Ok;
            }

            var gone = store is SqliteSessionStore ? "The record was written anew; no byte of them is left in it." : "Their rows were freed (VACUUM); the server may keep bytes of them in its files and its log until it writes over them (docs/store.md).";
            console.Out.WriteLine($"Erased for good: {Words.Count(erased.Sessions.Count, "session")} (erasure {erased.Id}). {gone} A chain is told at the next sending.");
            console.Out.WriteLine("Copies that were made before still hold them: delete your backups, or erase the bowler again after a restore (that is done by itself).");
            foreach (var copy in erased.CopiesLeft)
            {
                console.Out.WriteLine($"  an older copy lies here: {copy}");
            }

            return ExitCodes.Ok;
        });
        return command;
    }
}
