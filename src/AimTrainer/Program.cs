using AimTrainer.Commands;
using AimTrainer.Output;

namespace AimTrainer;

/// <summary>The program: command line in, exit code out (0 ok, 1 the work failed, 2 wrong usage or bad input).</summary>
internal static class Program
{
    // Main stays synchronous: windows are opened on this very thread.
    private static int Main(string[] args) => CommandLine.Run(args, UserConsole.OfProcess());
}
