using System.CommandLine;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;
using AimTrainer.Store;
using AimTrainer.Store.Sqlite;

namespace AimTrainer.Commands;

/// <summary>Puts a backup in the place of the record, which is kept beside it.</summary>
internal static class RestoreCommand
{
    public static Command Create(UserConsole console)
    {
        var from = new Argument<string>("file") { Description = "A file that backup made.", HelpName = "FILE" };
        var json = CommonOptions.Json();
        var command = new Command("restore", "Put a backup in the place of the record; the record that was there is kept beside it.") { from, json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            // A file that cannot be read is said before the data folder is made.
            await UserFiles.OpenRead(parsed.GetValue(from)!).DisposeAsync().ConfigureAwait(false);
            RecordOption.RefuseDatabase(parsed, "restore");
            using var folder = DataFolder.Open(DataPlace.Named(parsed));

            // Before anything is put in its place: what cannot be read could be a person who must not come back.
            var erasures = new Erasures(folder.FolderPath).All();
            var report = await RecordBackup.RestoreAsync(folder, parsed.GetValue(from)!, TimeProvider.System, cancellationToken).ConfigureAwait(false);

            // What was erased since the backup was made must not come back with it.
            var erasedAgain = erasures.Count == 0 ? 0 : await EraseAgainAsync(folder, cancellationToken).ConfigureAwait(false);
            if (parsed.GetValue(json))
            {
                Json.Print(console, report);
            }
            else
            {
                console.Out.WriteLine($"{report.File}: restored, {Words.Count(report.Sessions, "session")}");
                if (erasedAgain > 0)
                {
                    console.Out.WriteLine($"{Words.Count(erasedAgain, "session")} of it had been erased since and were erased again");
                }

                if (report.Replaced is { } replaced)
                {
                    console.Out.WriteLine($"The record that was there is kept as {replaced}");
                }
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    private static async Task<int> EraseAgainAsync(DataFolder folder, CancellationToken cancellationToken)
    {
        using var store = SqliteSessionStore.Open(folder);
        return await new RecordErasure(store, folder.FolderPath, TimeProvider.System).EraseAgainAsync(cancellationToken).ConfigureAwait(false);
    }
}
