using AimTrainer.Commands;
using AimTrainer.Output;
using AimTrainer.Sessions;

namespace AimTrainer;

/// <summary>The program: command line in, exit code out (0 ok, 1 the work failed, 2 wrong usage or bad input).</summary>
internal static class Program
{
    // Main stays synchronous: a later window must be opened on this very thread.
    private static int Main(string[] args)
    {
        var parsed = CommandLine.Create().Parse(args);
        if (parsed.Errors.Count > 0)
        {
            foreach (var error in parsed.Errors)
            {
                Console.Error.WriteLine(error.Message);
            }

            Console.Error.WriteLine($"See: aimtrainer {string.Join(' ', CommandLine.PathOf(parsed.CommandResult))} --help".Replace("  ", " ", StringComparison.Ordinal));
            return ExitCodes.BadInput;
        }

        try
        {
            return parsed.Invoke(new() { EnableDefaultExceptionHandler = false });
        }
        catch (UserException exception)
        {
            Console.Error.WriteLine(exception.Message);
            return exception.ExitCode;
        }
        catch (StoreUnavailableException exception)
        {
            Console.Error.WriteLine(exception.Message);
            return ExitCodes.Failed;
        }
        catch (OperationCanceledException)
        {
            Console.Error.WriteLine("stopped");
            return ExitCodes.Failed;
        }
    }
}
