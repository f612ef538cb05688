using System.CommandLine;
using AimTrainer.Output;
using AimTrainer.Setup;
using AimTrainer.Store.Sqlite;

namespace AimTrainer.Commands;

/// <summary>Puts a backup in the place of the record, which is kept beside it.</summary>
internal static class RestoreCommand
{
    public static Command Create()
    {
        var from = new Argument<string>("file") { Description = "A file that backup made.", HelpName = "FILE" };
        var json = CommonOptions.Json();
        var command = new Command("restore", "Put a backup in the place of the record; the record that was there is kept beside it.") { from, json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var folder = DataFolder.Open(DataPlace.Named(parsed));
            var report = await RecordBackup.RestoreAsync(folder, parsed.GetValue(from)!, TimeProvider.System, cancellationToken).ConfigureAwait(false);
            if (parsed.GetValue(json))
            {
                Json.Print(report);
            }
            else
            {
                Console.Out.WriteLine($"{report.File}: restored, {report.Sessions} sessions");
                if (report.Replaced is { } replaced)
                {
                    Console.Out.WriteLine($"The record that was there is kept as {replaced}");
                }
            }

            return ExitCodes.Ok;
        });
        return command;
    }
}
