using System.Diagnostics;
using System.Reflection;

namespace AimTrainer.Faults.Tests;

/// <summary>Starts the built program as a process of its own.</summary>
internal static class TheProgram
{
    private static readonly string _file = typeof(TheProgram).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(metadata => metadata.Key == "Program").Value!;

    /// <summary>Starts it with nobody at its terminal.</summary>
    /// <param name="inside">What to start it through (<see cref="SmallDisk.Inside"/>); empty for nothing.</param>
    /// <param name="arguments">Its command line.</param>
    public static RunningProgram Start(IReadOnlyList<string> inside, params IEnumerable<string> arguments)
    {
        string[] words = [.. inside, "dotnet", _file, .. arguments];
        return new RunningProgram(new ProcessStartInfo(words[0], words[1..])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        });
    }

    /// <summary>Runs it to its end.</summary>
    public static async Task<Outcome> RunAsync(IReadOnlyList<string> inside, CancellationToken cancellationToken, params IEnumerable<string> arguments)
    {
        using var program = Start(inside, arguments);
        var lines = new List<string>();
        while (await program.NextLineAsync(cancellationToken) is { } line)
        {
            lines.Add(line);
        }

        return await program.EndAsync(lines);
    }

    /// <summary>Runs it to its end, outside any small disk.</summary>
    public static Task<Outcome> RunAsync(CancellationToken cancellationToken, params IEnumerable<string> arguments) =>
        RunAsync([], cancellationToken, arguments);
}
