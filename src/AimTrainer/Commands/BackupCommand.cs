using System.CommandLine;
using AimTrainer.Output;
using AimTrainer.Setup;
using AimTrainer.Store.Sqlite;

namespace AimTrainer.Commands;

/// <summary>Copies the record into a file, also while a session runs.</summary>
internal static class BackupCommand
{
    public static Command Create(UserConsole console)
    {
        var to = new Argument<string>("file") { Description = "Where the copy goes.", HelpName = "FILE" };
        var overwrite = new Option<bool>("--overwrite") { Description = "Replace the file if there is one." };
        var json = CommonOptions.Json();
        var command = new Command("backup", "Copy the whole record into one file; a running session is not disturbed.") { to, overwrite, json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            RecordOption.RefuseDatabase(parsed, "backup");
            using var folder = DataFolder.OpenForReading(DataPlace.Named(parsed));
            if (!folder.HasRecord)
            {
                throw StoreForReading.NoRecord(folder);
            }

            var report = await RecordBackup.BackupAsync(folder, parsed.GetValue(to)!, parsed.GetValue(overwrite), cancellationToken).ConfigureAwait(false);
            if (parsed.GetValue(json))
            {
                Json.Print(console, report);
            }
            else
            {
                console.Out.WriteLine($"{report.File}: {Words.Count(report.Sessions, "session")}, {report.Bytes} bytes, checked");
            }

            return ExitCodes.Ok;
        });
        return command;
    }
}
