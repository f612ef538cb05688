using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.Data.Sqlite;

namespace AimTrainer.Benchmarks;

/// <summary>A live shot, from the station's door to its acknowledgement, against one durable insert of a row of that size by hand.</summary>
internal static class AcknowledgeBenchmark
{
    private const int Rounds = 20;
    private const int ShotsARound = 100;

    /// <summary>Rounds until the runtime has compiled what is hot; of a few of them the ratio is printed too.</summary>
    private const int WarmUp = 20;
    private const int Cold = 3;

    public static async Task RunAsync()
    {
        using var place = new DataPlace();
        var (folder, store) = place.Open();
        using var held = folder;
        using var kept = store;
        using var stop = new CancellationTokenSource();
        var station = new Station(1, store, TimeProvider.System);
        var running = station.RunAsync(stop.Token);
        var drill = Drills.Blocks(Drills.Weighted, (Rounds + WarmUp) * ShotsARound / 40);
        await station.StartAsync(Drills.Setup(drill, 1, "measured"), drill, stop.Token);
        await station.FollowAsync(new SessionInput.Begin(DateTimeOffset.UnixEpoch), stop.Token);
        var shots = ShotFile.Shots((Rounds + WarmUp) * ShotsARound);

        using var byHand = new InsertByHand(Path.Combine(place.Folder, "by-hand.db"));
        var (acknowledged, inserted, ratios, cold) = (new List<double>(), new List<double>(), new List<double>(), new List<double>());
        for (var round = 0; round < Rounds + WarmUp; round++)
        {
            var (live, hand) = (new List<double>(), new List<double>());
            for (var i = 0; i < ShotsARound; i++)
            {
                // Turn by turn, so that whatever else the disk does meets both alike.
                var from = Stopwatch.GetTimestamp();
                var reply = await station.ThrowAsync(shots[(round * ShotsARound) + i], stop.Token);
                live.Add(Stopwatch.GetElapsedTime(from).TotalMilliseconds);
                var entry = (reply as StationReply.Kept)?.Entry ?? throw new InvalidOperationException($"not kept: {reply}");
                var (input, events) = (JsonSerializer.Serialize(entry.Input, DomainJson.Options), JsonSerializer.Serialize(entry.Events, DomainJson.Options));
                from = Stopwatch.GetTimestamp();
                byHand.Insert(entry.Sequence, entry.Input.At, input, events);
                hand.Add(Stopwatch.GetElapsedTime(from).TotalMilliseconds);
            }

            var (liveMedian, handMedian) = (new Spread(live).Median, new Spread(hand).Median);
            if (round < Cold)
            {
                cold.Add(liveMedian / handMedian);
            }
            else if (round >= WarmUp)
            {
                acknowledged.Add(liveMedian);
                inserted.Add(handMedian);
                ratios.Add(liveMedian / handMedian);
            }
        }

        await stop.CancelAsync();
        await running.ContinueWith(_ => { }, TaskScheduler.Default);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"acknowledge: a shot {new Spread(acknowledged)} ms, an insert by hand {new Spread(inserted)} ms, ratio {new Spread(ratios)}, target 2; "
            + $"medians of {Rounds} rounds of {ShotsARound}, turn by turn, after {WarmUp} to warm up (ratio of the first {Cold}: {new Spread(cold)}); on {Machine.DiskOf(place.Folder)}"));
    }

    /// <summary>One row a transaction: WAL, synchronous FULL, prepared once.</summary>
    private sealed class InsertByHand : IDisposable
    {
        private readonly SqliteConnection _connection;
        private readonly SqliteCommand _insert;

        public InsertByHand(string file)
        {
            _connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Pooling = false }.ToString());
            _connection.Open();
            using var set = _connection.CreateCommand();
            set.CommandText =
                """
                PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;
                CREATE TABLE steps (session INTEGER, sequence INTEGER, at TEXT, input TEXT, events TEXT, PRIMARY KEY (session, sequence)) WITHOUT ROWID;
                """;
            set.ExecuteNonQuery();
            _insert = _connection.CreateCommand();
            _insert.CommandText = "INSERT INTO steps VALUES (1, $sequence, $at, $input, $events)";
            foreach (var name in (string[])["$sequence", "$at", "$input", "$events"])
            {
                _insert.Parameters.Add(new SqliteParameter(name, null));
            }

            _insert.Prepare();
        }

        public void Insert(long sequence, DateTimeOffset at, string input, string events)
        {
            _insert.Parameters[0].Value = sequence;
            _insert.Parameters[1].Value = at.UtcDateTime;
            _insert.Parameters[2].Value = input;
            _insert.Parameters[3].Value = events;
            _insert.ExecuteNonQuery();
        }

        public void Dispose()
        {
            _insert.Dispose();
            _connection.Dispose();
        }
    }
}
