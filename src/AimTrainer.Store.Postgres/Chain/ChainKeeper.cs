using System.Globalization;
using AimTrainer.Domain;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>Takes sessions of one center into the chain's tables, in a transaction that holds the center's lock.</summary>
/// <param name="connection">In the transaction.</param>
/// <param name="center">The center.</param>
internal sealed class ChainKeeper(NpgsqlConnection connection, int center)
{
    /// <summary>Takes what comes next of a session; what is there already is compared.</summary>
    public DeliveredAnswer Take(ReadSession session)
    {
        var place = Find(session.Id);
        if (place is null)
        {
            if (Ask<bool>("SELECT EXISTS (SELECT FROM erased_sessions WHERE center_id = $1 AND session_id = $2)", center, session.Id))
            {
                return new DeliveredAnswer(session.Id, 0, true, null);
            }

            if (session.Setup is null || session.Delivered.Drill is null)
            {
                // Without a setup nothing can be begun: the center sends it with the first step.
                return new DeliveredAnswer(session.Id, 0, false, session.Problem);
            }

            place = Begin(session);
        }

        var steps = session.Delivered.Steps;
        if (WhyOther(place, steps) is { } why)
        {
            return new DeliveredAnswer(session.Id, place.Last, false, why);
        }

        if (steps.Count > 0 && steps[0].Sequence > place.Last + 1)
        {
            // Something is missing in between: the answer says from where to go on.
            return new DeliveredAnswer(session.Id, place.Last, false, null);
        }

        var last = place.Last;
        using var batch = new NpgsqlBatch(connection);
        for (var i = 0; i < session.Events.Count; i++)
        {
            if (steps[i].Sequence > last)
            {
                Add(batch, place, steps[i], session.Events[i]);
                last = steps[i].Sequence;
            }
        }

        if (last > place.Last)
        {
            AddSums(batch, place, last);
            batch.ExecuteNonQuery();
        }

        return new DeliveredAnswer(session.Id, last, false, session.Problem);
    }

    private Kept? Find(string id)
    {
        using var find = Command("SELECT key, started_at, last_sequence FROM sessions WHERE center_id = $1 AND id = $2", center, id);
        using var reader = find.ExecuteReader();
        return reader.Read() ? new Kept(reader.GetInt64(0), reader.GetDateTime(1), reader.GetInt64(2)) : null;
    }

    private Kept Begin(ReadSession session)
    {
        var (setup, drill) = (session.Setup!, session.Delivered.Drill!);
        var bowler = Ask<long>(
            "INSERT INTO bowlers (center_id, name, key) VALUES ($1, $2, $3) ON CONFLICT (center_id, key) DO UPDATE SET name = bowlers.name RETURNING id",
            center, setup.Bowler.Trim(), NameKey.Of(setup.Bowler));
        using var begin = Command(
            """
            INSERT INTO sessions (center_id, id, station, started_at, bowler_id, hand, drill_hash, lane_name, setup_json, simulated, last_sequence, shots, points)
            VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, 0, 0, 0) RETURNING key, started_at
            """,
            center, setup.SessionId, setup.Station, setup.At.UtcDateTime, bowler, EnumText<Hand>.Write(setup.Hand), drill.Hash, setup.Lane.Name,
            session.Delivered.SetupJson!, setup.Simulated);
        using var reader = begin.ExecuteReader();
        reader.Read();

        // The moment as the table keeps it: to the microsecond, and every row of the session carries the same.
        return new Kept(reader.GetInt64(0), reader.GetDateTime(1), 0);
    }

    /// <summary>Whether steps that are there already came with other content.</summary>
    private string? WhyOther(Kept place, ValueList<DeliveredStep> steps)
    {
        var again = steps.Where(step => step.Sequence <= place.Last).ToDictionary(step => step.Sequence);
        if (again.Count == 0)
        {
            return null;
        }

        using var read = Command(
            "SELECT sequence, input_json, events_json FROM log_steps WHERE started_at = $1 AND session_key = $2 AND sequence BETWEEN $3 AND $4",
            place.StartedAt, place.Key, again.Keys.Min(), again.Keys.Max());
        using var reader = read.ExecuteReader();
        while (reader.Read())
        {
            if (again.TryGetValue(reader.GetInt64(0), out var step) && (step.InputJson != reader.GetString(1) || step.EventsJson != reader.GetString(2)))
            {
                return string.Create(
                    CultureInfo.InvariantCulture,
                    $"step {step.Sequence} is another one at the chain; nothing was overwritten. Was an old backup restored at the center and the session gone on with? Ask whoever runs the chain");
            }
        }

        return null;
    }

    private static void Add(NpgsqlBatch batch, Kept place, DeliveredStep step, ValueList<SessionEvent> events)
    {
        Run(
            batch, "INSERT INTO log_steps (started_at, session_key, sequence, at, input_json, events_json) VALUES ($1, $2, $3, $4, $5, $6)",
            place.StartedAt, place.Key, step.Sequence, step.At.UtcDateTime, step.InputJson, step.EventsJson);
        foreach (var happened in events)
        {
            switch (happened)
            {
                case SessionEvent.BlockBegan began:
                    Run(
                        batch, "INSERT INTO blocks (session_key, run, name, kind) VALUES ($1, $2, $3, $4) ON CONFLICT DO NOTHING",
                        place.Key, began.Run, began.Name, EnumText<BlockKind>.Write(began.BlockKind));
                    break;
                case SessionEvent.ShotGraded { Shot: var shot }:
                    AddCrossings(batch, place, shot);
                    break;
                case SessionEvent.ShotCorrected { After: var after }:
                    Run(batch, "DELETE FROM crossings WHERE started_at = $1 AND session_key = $2 AND number = $3", place.StartedAt, place.Key, after.Number);
                    AddCrossings(batch, place, after);
                    break;
                case SessionEvent.ShotVoided voided:
                    Run(
                        batch, "UPDATE crossings SET counts = false WHERE started_at = $1 AND session_key = $2 AND number = $3",
                        place.StartedAt, place.Key, voided.Number);
                    break;
                case SessionEvent.SessionEnded:
                    Run(batch, "UPDATE sessions SET ended_at = $2 WHERE key = $1", place.Key, step.At.UtcDateTime);
                    break;
                default:
                    break;
            }
        }
    }

    private static void AddCrossings(NpgsqlBatch batch, Kept place, GradedShot shot)
    {
        for (var i = 0; i < shot.Targets.Count; i++)
        {
            var result = shot.Targets[i];
            Run(
                batch,
                """
                INSERT INTO crossings (started_at, session_key, number, position, run, name, distance_feet, centre_board, width_boards,
                    crossing_board, miss_boards, held, points, counts)
                VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14)
                """,
                place.StartedAt, place.Key, shot.Number, i, shot.Run, result.Name, result.Target.Distance.Value, result.Target.Centre.Boards,
                result.Target.Width.Boards, result.Crossing.Board?.Boards, result.Miss?.Boards, result.Grade?.Holds, result.Grade?.Points, shot.VoidReason is null);
        }
    }

    private static void AddSums(NpgsqlBatch batch, Kept place, long last)
    {
        Run(
            batch,
            """
            UPDATE sessions SET last_sequence = $3,
                shots = (SELECT count(DISTINCT number) FROM crossings WHERE started_at = $2 AND session_key = $1 AND counts),
                points = (SELECT coalesce(sum(points), 0) FROM crossings WHERE started_at = $2 AND session_key = $1 AND counts)
            WHERE key = $1
            """,
            place.Key, place.StartedAt, last);
        Run(batch, "DELETE FROM sums WHERE session_key = $1", place.Key);
        Run(
            batch,
            """
            INSERT INTO sums (session_key, run, name, distance_feet, kind, shots, graded, held, sum_of_misses, sum_of_sizes, sum_of_squares)
            SELECT $1, crossings.run, crossings.name, distance_feet, blocks.kind, count(*), count(miss_boards), count(*) FILTER (WHERE held),
                coalesce(sum(miss_boards), 0), coalesce(sum(abs(miss_boards)), 0), coalesce(sum(miss_boards * miss_boards), 0)
            FROM crossings LEFT JOIN blocks ON blocks.session_key = $1 AND blocks.run = crossings.run
            WHERE started_at = $2 AND crossings.session_key = $1 AND counts
            GROUP BY crossings.run, crossings.name, distance_feet, blocks.kind
            """,
            place.Key, place.StartedAt);
    }

    private static void Run(NpgsqlBatch batch, string sql, params ReadOnlySpan<object?> values)
    {
        var command = new NpgsqlBatchCommand(sql);
        foreach (var value in values)
        {
            command.Parameters.Add(new NpgsqlParameter { Value = value ?? DBNull.Value });
        }

        batch.BatchCommands.Add(command);
    }

    private NpgsqlCommand Command(string sql, params ReadOnlySpan<object> values)
    {
        var command = new NpgsqlCommand(sql, connection);
        foreach (var value in values)
        {
            command.Parameters.Add(new NpgsqlParameter { Value = value });
        }

        return command;
    }

    private T Ask<T>(string sql, params ReadOnlySpan<object> values)
    {
        using var command = Command(sql, values);
        return (T)command.ExecuteScalar()!;
    }

    private sealed record Kept(long Key, DateTime StartedAt, long Last);
}
