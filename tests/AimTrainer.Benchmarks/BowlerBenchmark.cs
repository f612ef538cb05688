using System.Diagnostics;
using System.Globalization;
using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Reports;
using AimTrainer.Sessions;
using AimTrainer.Store;
using AimTrainer.Store.Sqlite;
using Microsoft.Data.Sqlite;

namespace AimTrainer.Benchmarks;

/// <summary>
/// A million stored shots of 500 bowlers: one bowler's sums by the store against the same SQL by hand, and all that a report of the
/// bowler needs, with every trend worked out.
/// </summary>
internal static class BowlerBenchmark
{
    private const int Bowlers = 500;
    private const int Rounds = 40;
    private const int WarmUp = 10;
    private const int Crossings = 300;

    public static async Task RunAsync()
    {
        using var place = new DataPlace();
        var from = Stopwatch.GetTimestamp();
        BowlerRecords.Fill(place.Folder, Bowlers);
        var filled = Stopwatch.GetElapsedTime(from).TotalSeconds;
        using var folder = DataFolder.OpenForReading(place.Folder);
        using var store = SqliteSessionStore.Open(folder);
        var (sums, byHand, ratios, report, bytes, page) = (new List<double>(), new List<double>(), new List<double>(), new List<double>(), new List<double>(), new List<double>());
        var reader = new ReportReader(store, TimeProvider.System);
        var (progress, progressPage) = (new ProgressReader(store, TimeProvider.System), new List<double>());
        var (first, firstPage, firstProgress) = (0.0, 0.0, 0.0);
        for (var round = 0; round < Rounds + WarmUp; round++)
        {
            // Another bowler each time; both ways of the same bowler turn by turn, the first of the two in turn too.
            var filter = new PracticeFilter($"Bowler {1 + (round * 7 % Bowlers)}");
            var (mine, hand) = (0.0, 0.0);
            foreach (var way in round % 2 == 0 ? (int[])[0, 1] : [1, 0])
            {
                if (way == 0)
                {
                    mine = await MillisecondsAsync(async () => Check((await store.FindPracticeAsync(filter, CancellationToken.None))!.Blocks.Sum(block => block.Shots)));
                }
                else
                {
                    hand = await MillisecondsAsync(() =>
                    {
                        Check(SumsByHand.Read(folder.DatabaseFile, filter.Bowler));
                        return Task.CompletedTask;
                    });
                }
            }

            var before = GC.GetTotalAllocatedBytes(precise: true);
            var all = await MillisecondsAsync(() => ReportAsync(store, filter));
            var allocated = (GC.GetTotalAllocatedBytes(precise: true) - before) / 1048576.0;
            first = round == 0 ? all : first;
            var written = await MillisecondsAsync(() => PageAsync(reader, filter));
            firstPage = round == 0 ? written : firstPage;
            var shown = await MillisecondsAsync(() => ProgressAsync(progress, filter));
            firstProgress = round == 0 ? shown : firstProgress;
            if (round >= WarmUp)
            {
                sums.Add(mine);
                byHand.Add(hand);
                ratios.Add(mine / hand);
                report.Add(all);
                bytes.Add(allocated);
                page.Add(written);
                progressPage.Add(shown);
            }
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"bowler: {Bowlers * BowlerRecords.SessionsEach * BowlerRecords.ShotsASession} shots of {Bowlers} bowlers (filled in {filled:0} s, "
            + $"{new FileInfo(folder.DatabaseFile).Length >> 20} MiB on {Machine.DiskOf(place.Folder)}); sums of one {new Spread(sums)} ms, "
            + $"the same SQL by hand {new Spread(byHand)} ms, ratio {new Spread(ratios)}, target 3; "
            + $"all of a report with trends {new Spread(report)} ms (first {first:0} ms), target 1000, "
            + $"allocating {new Spread(bytes)} MiB; "
            + $"the page read and written as HTML {new Spread(page)} ms (first {firstPage:0} ms), target 1000; "
            + $"all of the console's page of a bowler, with figures apart by drill and four charts, {new Spread(progressPage)} ms (first {firstProgress:0} ms), target 1000; {Rounds} rounds, turn by turn, after {WarmUp} to warm up"));
    }

    private static async Task ReportAsync(SqliteSessionStore store, PracticeFilter filter)
    {
        var practice = (await store.FindPracticeAsync(filter, CancellationToken.None))!;
        var crossings = await store.LastCrossingsAsync(filter, Crossings, CancellationToken.None);
        var record = TestRecord.Of(practice.Blocks);
        var points = record.Series.Sum(series =>
            TrendFigures.Of(series.Spreads, TrendScale.Logarithm, record.Kinds, series.Freedom).Count + TrendFigures.Of(series.Biases, TrendScale.AsGiven).Count);
        if (points != 4 * BowlerRecords.SessionsEach || crossings.Count < Crossings)
        {
            throw new InvalidOperationException($"{points} points and {crossings.Count} crossings");
        }
    }

    private static async Task PageAsync(ReportReader reader, PracticeFilter filter)
    {
        var report = (await reader.ReadAsync(filter, CancellationToken.None))!;
        using var html = new MemoryStream();
        ReportWriter.Write(report, ReportFormat.Html, html);
        if (report.Lane.Shots != Crossings || report.Trend.Points.Count != BowlerRecords.SessionsEach || html.Length < 10_000)
        {
            throw new InvalidOperationException($"{report.Lane.Shots} shots, {report.Trend.Points.Count} points, {html.Length} bytes");
        }
    }

    private static async Task ProgressAsync(ProgressReader reader, PracticeFilter filter)
    {
        var all = (await reader.AllAsync(filter, null, Grouping.Drill, CancellationToken.None))!;
        var pictures = ReportWriter.Pictures(all.Report);
        if (all.Figures.Newest != BowlerRecords.SessionsEach * BowlerRecords.ShotsASession || pictures.Trend.Svg is null || pictures.Lane.Svg is null)
        {
            throw new InvalidOperationException($"{all.Figures.Newest} shots");
        }
    }

    // Shots by the targets thrown at: one target in 25 shots of a session, two in 15.
    private static void Check(int throws)
    {
        if (throws != BowlerRecords.SessionsEach * 55)
        {
            throw new InvalidOperationException($"{throws} throws");
        }
    }

    private static async Task<double> MillisecondsAsync(Func<Task> action)
    {
        var from = Stopwatch.GetTimestamp();
        await action();
        return Stopwatch.GetElapsedTime(from).TotalMilliseconds;
    }

    /// <summary>What <see cref="PracticeQueries"/> asks for, written by hand: one connection, one statement, rows into records.</summary>
    private static class SumsByHand
    {
        private const string Sql = """
            SELECT s.id, s.started_at, g.run, g.block_name, g.block_kind, b.name, t.name, t.distance_feet, count(*), count(t.miss_boards),
                coalesce(sum(t.held), 0), coalesce(sum(t.miss_boards), 0), coalesce(sum(abs(t.miss_boards)), 0),
                coalesce(sum(t.miss_boards * t.miss_boards), 0), min(t.crossing_board), max(t.crossing_board),
                coalesce(sum(t.crossing_board = round(t.crossing_board)), 0)
            FROM bowlers w
            JOIN sessions s ON s.bowler_id = w.id
            JOIN graded_shots g ON g.session_key = s.key
            JOIN shot_targets t ON t.session_key = g.session_key AND t.number = g.number
            LEFT JOIN balls b ON b.id = g.ball_id
            WHERE w.key = $key AND s.simulated = 0 AND s.hand = 'right' AND g.void_reason IS NULL AND g.simulated = 0
            GROUP BY s.started_at, s.key, g.run, g.block_name, g.block_kind, b.name, t.name, t.distance_feet
            """;

        public static int Read(string file, string bowler)
        {
            using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Mode = SqliteOpenMode.ReadOnly, Pooling = false }.ToString());
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = Sql;
            command.Parameters.AddWithValue("$key", NameKey.Of(bowler));
            using var reader = command.ExecuteReader();
            var blocks = new List<PracticeBlock>();
            while (reader.Read())
            {
                blocks.Add(new PracticeBlock(
                    reader.GetString(0), new DateTimeOffset(reader.GetDateTime(1), TimeSpan.Zero), reader.GetInt32(2), reader.GetString(3),
                    Enum.Parse<BlockKind>(reader.GetString(4), true), reader.IsDBNull(5) ? null : reader.GetString(5), reader.GetString(6), reader.GetDouble(7),
                    reader.GetInt32(8), reader.GetInt32(9), reader.GetInt32(10), reader.GetDouble(11), reader.GetDouble(12), reader.GetDouble(13),
                    reader.GetDouble(14), reader.GetDouble(15), reader.GetInt32(16)));
            }

            return blocks.Sum(block => block.Shots);
        }
    }
}
