using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Sessions;

namespace AimTrainer.Benchmarks;

/// <summary>Invented shots as a file of eleven columns.</summary>
internal static class ShotFile
{
    private const string Headings = "id,time,laydownBoard,arrowsBoard,boardAt40,speedMph,speedAt,revsRpm,launchAngleDeg,entryAngleDeg,pins";

    private static readonly DateTimeOffset _first = new(2026, 1, 5, 18, 0, 0, TimeSpan.Zero);

    public static CsvSettings Settings => new() { Lane = LaneProfileReader.Default };

    /// <summary>Writes the file.</summary>
    public static void Write(string file, int shots)
    {
        var chance = new Random(1);
        using var text = new StreamWriter(file) { NewLine = "\n" };
        text.WriteLine(Headings);
        for (var i = 1; i <= shots; i++)
        {
            text.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"s{i},{_first.AddSeconds(i * 20L):yyyy-MM-ddTHH:mm:ssZ},{Near(14, 1):F1},{Near(10, 2):F2},{Near(7, 2.5):F2},{Near(17, 0.4):F1},release,"
                + $"{Near(330, 15):F0},{Near(2, 0.3):F2},{Near(5, 0.5):F2},{chance.Next(4, 11)}"));
        }

        double Near(double centre, double spread) => centre + (spread * ((chance.NextDouble() + chance.NextDouble() + chance.NextDouble()) - 1.5) * 2);
    }

    /// <summary>The shots of such a file.</summary>
    public static List<Shot> Shots(int count)
    {
        var file = Path.GetTempFileName();
        try
        {
            Write(file, count);
            using var stream = File.OpenRead(file);
            return [.. CsvShots.Read(stream, file, Settings).Cast<FeedItem.ShotRead>().Select(read => read.Shot)];
        }
        finally
        {
            File.Delete(file);
        }
    }
}
