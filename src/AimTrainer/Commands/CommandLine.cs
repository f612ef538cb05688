using System.CommandLine;
using System.CommandLine.Parsing;

namespace AimTrainer.Commands;

/// <summary>All commands.</summary>
internal static class CommandLine
{
    public static RootCommand Create()
    {
        var root = new RootCommand(
            "Runs target practice for ten-pin bowling: shows where the ball should cross, takes in each shot, grades it against exactly "
            + "what was shown, sizes the next target, and keeps the record.")
        {
            DemoCommand.Create(),
            RunCommand.Create(),
            ReplayCommand.Create(),
            DrillCommands.Create(),
            ShotCommands.Create(),
            SessionCommands.Create(),
            BackupCommand.Create(),
            RestoreCommand.Create(),
        };
        root.Options.Add(CommonOptions.Data);
        return root;
    }

    /// <summary>The names of a command and those above it, for "see --help".</summary>
    public static IEnumerable<string> PathOf(CommandResult command) => command.Parent is CommandResult parent
        ? PathOf(parent).Append(command.Command.Name) : [];
}
