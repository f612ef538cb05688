namespace AimTrainer.Benchmarks;

/// <summary>
/// Measures ratios in one run, each against something done by hand beside it: <c>all</c>, or <c>replay</c>, <c>acknowledge</c>,
/// <c>stations [SECONDS]</c>, <c>start</c>, <c>bowler</c>, <c>path</c>, <c>comparison</c> (minutes; not among all),
/// <c>display [SECONDS]</c>, <c>frame</c>, <c>web [SECONDS]</c>, <c>sync</c>, <c>chain-plans [ROWS]</c> <c>evening [SECONDS]</c> (minutes; the last three not among all). Prints one line each. Build with <c>-c Release</c>.
/// </summary>
internal static class Program
{
    /// <summary>Does nothing: what <see cref="StartBenchmark"/> holds against the start of the program.</summary>
    public const string Empty = "empty";

    private static async Task<int> Main(string[] args)
    {
        var what = args is [var first, ..] ? first : "all";
        if (what == Empty)
        {
            return 0;
        }

        if (args is [BareServer.Name, var file])
        {
            await BareServer.RunAsync(file);
            return 0;
        }

        if (args is [WebBenchmark.Server, var folder, var stations])
        {
            await BareServer.RunOursAsync(folder, int.Parse(stations, System.Globalization.CultureInfo.InvariantCulture));
            return 0;
        }

        var seconds = args is [_, var second] && int.TryParse(second, out var given) ? given : 10;
        Func<Task>[] benchmarks = what switch
        {
            "all" =>
            [
                ReplayBenchmark.RunAsync, AcknowledgeBenchmark.RunAsync, () => StationsBenchmark.RunAsync(seconds), StartBenchmark.RunAsync,
                BowlerBenchmark.RunAsync, PathBenchmark.RunAsync, FrameBenchmark.RunAsync, () => WebBenchmark.RunAsync(seconds),
            ],
            "replay" => [ReplayBenchmark.RunAsync],
            "acknowledge" => [AcknowledgeBenchmark.RunAsync],
            "stations" => [() => StationsBenchmark.RunAsync(seconds)],
            "start" => [StartBenchmark.RunAsync],
            "bowler" => [BowlerBenchmark.RunAsync],
            "path" => [PathBenchmark.RunAsync],
            "comparison" => [ComparisonBenchmark.RunAsync],
            "display" => [() => DisplayBenchmark.RunAsync(seconds)],
            "frame" => [FrameBenchmark.RunAsync],
            "evening" => [() => EveningBenchmark.RunAsync(args.Length > 1 ? seconds : EveningBenchmark.WholeSeconds)],
            "web" => [() => WebBenchmark.RunAsync(seconds)],
            "sync" => [SyncBenchmark.RunAsync],
            "chain-plans" => [() => ChainPlansBenchmark.RunAsync(args is [_, var rows] ? int.Parse(rows, System.Globalization.CultureInfo.InvariantCulture) : 10_000_000)],
            _ => [],
        };
        if (benchmarks.Length == 0)
        {
            await Console.Error.WriteLineAsync($"found {what}; allowed: all, replay, acknowledge, stations [SECONDS], start, bowler, path, comparison, display [SECONDS], frame, web [SECONDS], sync, chain-plans [ROWS], evening [SECONDS]");
            return 2;
        }

        Console.WriteLine(Machine.Describe());
        foreach (var benchmark in benchmarks)
        {
            await benchmark();
        }

        return 0;
    }
}
