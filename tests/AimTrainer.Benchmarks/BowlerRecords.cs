using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Store.Sqlite;
using Microsoft.Data.Sqlite;

namespace AimTrainer.Benchmarks;

/// <summary>
/// A record filled fast with invented sessions, past the store: the tables that questions read, without the logs. Each session is a
/// test of fifteen shots at the arrows, ten of training, and a test of fifteen on a line of two targets.
/// </summary>
internal static class BowlerRecords
{
    public const int SessionsEach = 50;
    public const int ShotsASession = 40;

    private static readonly DateTimeOffset _first = new(2026, 1, 5, 18, 0, 0, TimeSpan.Zero);

    /// <summary>Fills the record of a folder.</summary>
    public static void Fill(string folder, int bowlers)
    {
        string file;
        using (var data = DataFolder.Open(folder))
        {
            SqliteSessionStore.Open(data).Dispose();
            file = data.DatabaseFile;
        }

        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Pooling = false }.ToString());
        connection.Open();
        Execute(connection, "PRAGMA synchronous = OFF; PRAGMA journal_mode = MEMORY; PRAGMA cache_size = -200000");
        using (var transaction = connection.BeginTransaction())
        {
            FillTables(connection, bowlers);
            transaction.Commit();
        }

        Execute(connection, "PRAGMA journal_mode = WAL");
    }

    private static void FillTables(SqliteConnection connection, int bowlers)
    {
        Execute(connection, "INSERT INTO drills VALUES ('hash', 'measured', 'Measured', '{}')");
        using var bowler = Insert(connection, "bowlers", "id", "name", "key");
        using var ball = Insert(connection, "balls", "id", "bowler_id", "name", "key");
        using var session = Insert(
            connection, "sessions", "key", "id", "station", "started_at", "bowler_id", "hand", "ball_id", "drill_hash", "lane_name", "setup_json",
            "simulated", "ended_at", "shots", "points");
        using var shot = Insert(
            connection, "graded_shots", "session_key", "number", "ball_id", "at", "run", "block_name", "block_kind", "aim", "place", "held", "points",
            "simulated", "laydown_board", "speed_mph", "speed_at", "revs_rpm", "shot_json");
        using var target = Insert(
            connection, "shot_targets", "session_key", "number", "position", "name", "distance_feet", "centre_board", "width_boards", "crossing",
            "crossing_board", "miss_boards", "grade", "held", "points");
        var shots = ShotFile.Shots(1_000);
        var json = shots.ConvertAll(one => JsonSerializer.Serialize(one, DomainJson.Options));
        var chance = new Random(1);
        for (var id = 1; id <= bowlers; id++)
        {
            Add(bowler, id, $"Bowler {id}", NameKey.Of($"Bowler {id}"));
            Add(ball, id, id, "blue one", "BLUE ONE");
        }

        // Week by week, as sessions come: a bowler's do not lie side by side.
        for (var week = 0; week < SessionsEach; week++)
        {
            for (var id = 1; id <= bowlers; id++)
            {
                var key = ((long)week * bowlers) + id;
                var at = _first.AddDays(7 * week).AddMinutes(id);
                var setup = new SessionSetup
                {
                    SessionId = $"session-{key}",
                    Station = 1,
                    At = at,
                    Bowler = $"Bowler {id}",
                    Hand = Hand.Right,
                    DrillId = "measured",
                    DrillHash = "hash",
                    Lane = LaneProfileReader.Default,
                    Seed = 1,
                };
                Add(
                    session, key, setup.SessionId, 1 + (id % 64), at.UtcDateTime, id, "right", id, "hash", "lane 1", JsonSerializer.Serialize(setup, DomainJson.Options),
                    false, at.AddHours(1).UtcDateTime, ShotsASession, 80);
                for (var number = 1; number <= ShotsASession; number++)
                {
                    var run = number <= 15 ? 0 : number <= 25 ? 1 : 2;
                    var which = chance.Next(shots.Count);
                    Add(
                        shot, key, number, id, at.AddSeconds(number * 40).UtcDateTime, run, $"Block {run}", run == 1 ? "training" : "test", "aim", 0, true, 2, false,
                        14.0, 17.1, "release", 320.0, json[which]);
                    AddTarget(0, run == 2 ? "third arrow" : "second arrow", 13.5, 10, 1.5);
                    if (run == 2)
                    {
                        AddTarget(1, "seven at 40 feet", 40, 7, 2.5);
                    }

                    void AddTarget(int position, string name, double feet, double centre, double spread)
                    {
                        var miss = Math.Round(spread * 2 * (chance.NextDouble() + chance.NextDouble() + chance.NextDouble() - 1.5), 2);
                        Add(target, key, number, position, name, feet, centre, 3.0, "measured", centre + miss, miss, "hit", Math.Abs(miss) <= 1.5, 2);
                    }
                }
            }
        }
    }

    private static SqliteCommand Insert(SqliteConnection connection, string table, params string[] columns)
    {
        var command = connection.CreateCommand();
        command.CommandText = $"INSERT INTO {table} ({string.Join(", ", columns)}) VALUES ({string.Join(", ", columns.Select(column => $"${column}"))})";
        foreach (var column in columns)
        {
            command.Parameters.Add(new SqliteParameter($"${column}", null));
        }

        command.Prepare();
        return command;
    }

    private static void Add(SqliteCommand command, params ReadOnlySpan<object> values)
    {
        for (var i = 0; i < values.Length; i++)
        {
            command.Parameters[i].Value = values[i];
        }

        command.ExecuteNonQuery();
    }

    private static void Execute(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
