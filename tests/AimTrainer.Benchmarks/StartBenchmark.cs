using System.Diagnostics;
using System.Globalization;

namespace AimTrainer.Benchmarks;

/// <summary>From the start of the process until the first target is shown, against the start of a program that does nothing.</summary>
internal static class StartBenchmark
{
    private const int Rounds = 10;

    private static readonly string _program = Path.Combine(AppContext.BaseDirectory, "aimtrainer.dll");
    private static readonly string _empty = Path.Combine(AppContext.BaseDirectory, "AimTrainer.Benchmarks.dll");

    public static async Task RunAsync()
    {
        using var place = new DataPlace();
        var (there, fresh, empty, ratios) = (new List<double>(), new List<double>(), new List<double>(), new List<double>());
        for (var round = 0; round <= Rounds; round++)
        {
            var nothing = await EmptyAsync();
            var first = await FirstTargetAsync(Path.Combine(place.Folder, $"fresh-{round}"));
            var again = await FirstTargetAsync(Path.Combine(place.Folder, "there"));

            // The first round warms the disk's cache and makes the record that is there from then on.
            if (round > 0)
            {
                empty.Add(nothing);
                fresh.Add(first);
                there.Add(again);
                ratios.Add(again / nothing);
            }
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"start: to the first target {new Spread(there)} s (with no record yet {new Spread(fresh)} s), a program that does nothing {new Spread(empty)} s, "
            + $"ratio {new Spread(ratios)}; {Rounds} rounds, turn by turn"));
    }

    private static async Task<double> EmptyAsync()
    {
        var from = Stopwatch.GetTimestamp();
        using var process = Start(_empty, Program.Empty);
        await process.WaitForExitAsync();
        return Stopwatch.GetElapsedTime(from).TotalSeconds;
    }

    private static async Task<double> FirstTargetAsync(string data)
    {
        var from = Stopwatch.GetTimestamp();
        using var process = Start(
            _program, "run", "--json", "--drill", "two-point-line", "--bowler", "Measured", "--end-open", "--follow", Path.Combine(data, "no-shots.csv"), "--data", data);
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.Contains("aimShown", StringComparison.Ordinal) && !line.Contains("sessionEnded", StringComparison.Ordinal))
            {
                var elapsed = Stopwatch.GetElapsedTime(from).TotalSeconds;
                process.Kill();
                await process.WaitForExitAsync();
                return elapsed;
            }
        }

        throw new InvalidOperationException($"no target was shown: {await process.StandardError.ReadToEndAsync()}");
    }

    private static Process Start(params string[] arguments)
    {
        var process = Process.Start(new ProcessStartInfo("dotnet", arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        process.StandardInput.Close();
        return process;
    }
}
