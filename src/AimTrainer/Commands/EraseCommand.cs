using System.CommandLine;
using AimTrainer.Output;
using AimTrainer.Setup;
using AimTrainer.Store;
using AimTrainer.Store.Sqlite;

namespace AimTrainer.Commands;

/// <summary>Forgets a bowler on the bowler's wish.</summary>
internal static class EraseCommand
{
    public static Command Create(UserConsole console)
    {
        var bowler = CommonOptions.Name("--bowler", "Who wants to be forgotten.");
        bowler.Required = true;
        var sure = new Option<bool>("--yes") { Description = "Really: nothing of it can be brought back." };
        var command = new Command("erase", "Erase a bowler with all sessions, here and, at the next sending, at the chain. Backups made before keep them.") { bowler, sure };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var name = parsed.GetValue(bowler)!;
            using var folder = DataFolder.Open(DataPlace.Named(parsed));
            using var store = StoreForWriting.Open(parsed, folder);
            if (!parsed.GetValue(sure))
            {
                var sessions = await store.ListAsync(new Sessions.SessionFilter { Bowler = name, Limit = int.MaxValue }, cancellationToken).ConfigureAwait(false);
                throw new UserException($"{Words.Count(sessions.Count, "session")} of {name} would go for good; add --yes to do it");
            }

            try
            {
                var erased = await new Forgetting(store, new CenterFiles(folder.FolderPath), TimeProvider.System).EraseBowlerAsync(name, cancellationToken).ConfigureAwait(false)
                    ?? throw new UserException($"{name}: no such bowler; see: aimtrainer sessions list");
                console.Out.WriteLine($"{Words.Count(erased.Sessions.Count, "session")} erased. Backups made before still hold them: delete those, or erase again after a restore");
                return ExitCodes.Ok;
            }
            catch (InvalidOperationException exception)
            {
                throw new UserException(exception.Message);
            }
        });
        return command;
    }
}
