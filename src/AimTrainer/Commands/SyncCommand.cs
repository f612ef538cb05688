using System.CommandLine;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;
using AimTrainer.Store;
using AimTrainer.Store.Sqlite;

namespace AimTrainer.Commands;

/// <summary>Sends a center's events to its chain.</summary>
internal static class SyncCommand
{
    public static Command Create(UserConsole console)
    {
        var to = ChainSettings.Address("--to", "The chain's address.");
        to.Required = true;
        var token = ChainSettings.TokenFile();
        var json = CommonOptions.Json();
        var command = new Command("sync", "Send what the chain has not yet got, once. A host does so all the time (serve --chain).") { to, token, json, Status(console) };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var link = ChainSettings.Link(parsed.GetValue(to)!, parsed.GetValue(token));
            using var folder = DataFolder.Open(DataPlace.Named(parsed));
            using var store = StoreForWriting.Open(parsed, folder);
            var groups = new CenterGroups(new GroupRegister(folder.FolderPath), ProgramCommands.Shelf(parsed));
            var erasing = new RecordErasure(store, folder.FolderPath, TimeProvider.System);
            var sync = new CenterSync(store, link, new CenterFiles(folder.FolderPath), erasing, TimeProvider.System, groups);
            var state = await sync.RunAsync(cancellationToken).ConfigureAwait(false);
            Print(console, state, parsed.GetValue(json));
            return state.IsComplete ? ExitCodes.Ok : ExitCodes.Failed;
        });
        return command;
    }

    private static Command Status(UserConsole console)
    {
        var json = CommonOptions.Json();
        var command = new Command("status", "How the sending stood when it was last noted: what waits, since when, what went wrong.") { json };
        command.SetAction(parsed =>
        {
            var state = new CenterFiles(DataPlace.Of(parsed)).ReadState()
                ?? throw new UserException($"{DataPlace.Of(parsed)}: nothing was ever sent from here; see: aimtrainer sync --help", ExitCodes.Failed);
            Print(console, state, parsed.GetValue(json));
            return ExitCodes.Ok;
        });
        return command;
    }

    private static void Print(UserConsole console, SyncState state, bool json)
    {
        if (json)
        {
            Json.Print(console, state);
            return;
        }

        foreach (var line in SyncWords.Of(state))
        {
            console.Out.WriteLine(line);
        }
    }
}
