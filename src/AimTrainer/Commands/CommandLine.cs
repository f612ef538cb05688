using System.CommandLine;
using AimTrainer.Output;
using AimTrainer.Sessions;

namespace AimTrainer.Commands;

/// <summary>All commands.</summary>
internal static class CommandLine
{
    public static RootCommand Create(UserConsole console)
    {
        var root = new RootCommand(
            "Runs target practice for ten-pin bowling: shows where the ball should cross, takes in each shot, grades it against exactly "
            + "what was shown, sizes the next target, and keeps the record.")
        {
            DemoCommand.Create(console),
            RunCommand.Create(console),
            ServeCommand.Create(console),
            PassphraseCommand.Create(console),
            ReplayCommand.Create(console),
            DrillCommands.Create(console),
            ProgramCommands.Create(console),
            ShotCommands.Create(console),
            SessionCommands.Create(console),
            BallCommands.Create(console),
            BowlerCommands.Create(console),
            DisplayCommand.Create(console),
            FramesCommand.Create(console),
            MonitorsCommand.Create(console),
            CalibrateCommands.Create(console),
            AnalyseCommand.Create(console),
            WhyCommand.Create(console),
            TrendCommand.Create(console),
            FiguresCommand.Create(console),
            ReportCommand.Create(console),
            CompareCommand.Create(console),
            PathCommand.Create(console),
            LineCommand.Create(console),
            FitLaneCommand.Create(console),
            AimCommand.Create(console),
            BackupCommand.Create(console),
            RestoreCommand.Create(console),
            SyncCommand.Create(console),
            ChainCommands.Create(console),
            SoundCommand.Create(console),
            StopCommand.Create(console),
            DoctorCommand.Create(console),
        };
        root.Options.Add(CommonOptions.Data());
        root.Options.Add(RecordOption.Create());
        return root;
    }

    /// <summary>Runs a command line; whatever a user can do wrong ends in one line of words on the error output.</summary>
    /// <returns>One of <see cref="ExitCodes"/>.</returns>
    public static int Run(IReadOnlyList<string> args, UserConsole console)
    {
        // Names that begin with @ are names, not files of more arguments.
        var parsed = Create(console).Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Errors.Count > 0)
        {
            console.Error.WriteLine(WrongUsage.InWords(parsed));
            return ExitCodes.BadInput;
        }

        try
        {
            var settings = new InvocationConfiguration { EnableDefaultExceptionHandler = false, Output = console.Out, Error = console.Error };
            return console.MainThread.Lend(() => parsed.InvokeAsync(settings));
        }
        catch (UserException exception)
        {
            console.Error.WriteLine(exception.Message);
            return exception.ExitCode;
        }
        catch (StoreUnavailableException exception)
        {
            console.Error.WriteLine(exception.Message);
            return ExitCodes.Failed;
        }
        catch (IOException exception)
        {
            // Named files have their own messages; what is left is the output, when it is sent to a full disk, or a disk that fails.
            console.Error.WriteLine(
                $"reading or writing failed: {exception.Message.TrimEnd('.', ' ')}. "
                + "Free some space or send the output elsewhere, and try again; what was acknowledged is kept");
            return ExitCodes.Failed;
        }
        catch (OperationCanceledException)
        {
            console.Error.WriteLine("stopped");
            return ExitCodes.Failed;
        }
    }
}
