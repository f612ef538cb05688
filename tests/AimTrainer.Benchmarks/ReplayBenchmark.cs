using System.Diagnostics;
using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Output;
using AimTrainer.Sessions;

namespace AimTrainer.Benchmarks;

/// <summary>A replay of a million shots against a loop that only reads the same file into shots.</summary>
internal static class ReplayBenchmark
{
    private const int Shots = 1_000_000;
    private const int Repetitions = 5;

    public static Task RunAsync()
    {
        var file = Path.Combine(Path.GetTempPath(), $"aimtrainer-benchmark-{Environment.ProcessId}.csv");
        try
        {
            ShotFile.Write(file, Shots);
            Measure(file, "fixed", Drills.Fixed, Repetitions);
            Measure(file, "weighted", Drills.Weighted, 3);
            Measure(file, "scatter", Drills.Scatter, 3);
        }
        finally
        {
            File.Delete(file);
        }

        return Task.CompletedTask;
    }

    private static void Measure(string file, string name, string sizing, int repetitions)
    {
        var drill = Drills.OneBlock(sizing, Shots);
        var (parse, replay, ratio) = (new List<double>(), new List<double>(), new List<double>());

        // The first round warms up and is thrown away.
        for (var round = 0; round <= repetitions; round++)
        {
            var (parsed, replayed) = (Seconds(() => Parse(file)), Seconds(() => Replayed(file, drill)));
            if (round > 0)
            {
                parse.Add(parsed);
                replay.Add(replayed);
                ratio.Add(replayed / parsed);
            }
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"replay ({name}): {Shots} shots; replay {new Spread(replay)} s, reading alone {new Spread(parse)} s, ratio {new Spread(ratio)}, target 3; {repetitions} rounds, turn by turn"));
    }

    private static double Seconds(Action action)
    {
        GC.Collect();
        var watch = Stopwatch.StartNew();
        action();
        return watch.Elapsed.TotalSeconds;
    }

    private static void Parse(string file)
    {
        using var stream = Open(file);
        var count = CsvShots.Read(stream, file, ShotFile.Settings).Count(item => item is FeedItem.ShotRead);
        Expect(count);
    }

    /// <summary>As the replay command does it, but for where the output goes.</summary>
    private static void Replayed(string file, DrillScript drill)
    {
        using var stream = Open(file);
        var setup = Drills.Setup(new DrillSource(drill, "none", ""), 1, "replay");
        using var writer = new ReplayJsonWriter(new BufferedStream(Stream.Null, 1 << 16), drill.Id, setup.Hand);
        var outcome = Replay.Run(
            SessionCore.Open(setup, drill).State!,
            ReadAhead.Of(CsvShots.Read(stream, file, ShotFile.Settings)),
            (_, events) => writer.Add(events),
            problem => throw new InvalidOperationException($"{problem}"));
        writer.Finish(outcome);
        Expect(outcome.Shots);
    }

    private static FileStream Open(string file) => new(file, FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16, FileOptions.SequentialScan);

    private static void Expect(int count)
    {
        if (count != Shots)
        {
            throw new InvalidOperationException($"{count} shots instead of {Shots}");
        }
    }
}
