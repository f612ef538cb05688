using AimTrainer.Domain;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace AimTrainer.Store.Sqlite;

/// <summary>
/// The statements that keep a step, prepared once. SQL by hand, unlike everything else, because a shot waits for these: EF
/// would track, compare and translate about ten rows anew for each. The names are those of <see cref="RecordContext"/>; the
/// tests read back through it.
/// </summary>
internal sealed class StepCommands : IDisposable
{
    private static readonly string[] ShotColumns =
    [
        "session_key", "number", "ball_id", "at", "run", "block_name", "block_kind", "aim", "place", "held", "points",
        "comparable", "void_reason", "simulated", "launch_angle_degrees", "launch_angle_computed", "laydown_board",
        "breakpoint_board", "breakpoint_feet", "entry_board", "entry_angle_degrees", "speed_mph", "speed_at", "revs_rpm",
        "axis_rotation_degrees", "axis_tilt_degrees", "pins", "shot_json",
    ];

    private readonly SqliteConnection _connection;
    private readonly PreparedCommand _begin;
    private readonly PreparedCommand _commit;
    private readonly PreparedCommand _findSession;
    private readonly PreparedCommand _addStep;
    private readonly PreparedCommand _addShot;
    private readonly PreparedCommand _addTarget;
    private readonly PreparedCommand _addBall;
    private readonly PreparedCommand _findBall;
    private readonly PreparedCommand _voidShot;
    private readonly PreparedCommand _correctShot;
    private readonly PreparedCommand _blockOfShot;
    private readonly PreparedCommand _dropTargets;
    private readonly PreparedCommand _addTotals;
    private readonly PreparedCommand _countAgain;
    private readonly PreparedCommand _endSession;

    public StepCommands(SqliteConnection connection)
    {
        _connection = connection;
        _begin = new(connection, "BEGIN IMMEDIATE");
        _commit = new(connection, "COMMIT");
        _findSession = new(
            connection,
            """
            SELECT key, bowler_id, ball_id, simulated, run, block_name, block_kind,
                (SELECT coalesce(max(sequence), 0) FROM log_steps WHERE session_key = sessions.key)
            FROM sessions WHERE id = $id
            """,
            "id");
        _addStep = PreparedCommand.Insert(connection, "log_steps", "session_key", "sequence", "at", "input_json", "events_json");
        _addShot = PreparedCommand.Insert(connection, "graded_shots", ShotColumns);
        _addTarget = PreparedCommand.Insert(
            connection, "shot_targets", "session_key", "number", "position", "name", "distance_feet", "centre_board", "width_boards",
            "crossing", "crossing_board", "miss_boards", "grade", "held", "points");
        _addBall = new(
            connection, "INSERT INTO balls (bowler_id, name, key) VALUES ($bowler, $name, $key) ON CONFLICT DO NOTHING",
            "bowler", "name", "key");
        _findBall = new(connection, "SELECT id FROM balls WHERE bowler_id = $bowler AND key = $key", "bowler", "key");
        _voidShot = new(
            connection, "UPDATE graded_shots SET void_reason = $reason WHERE session_key = $session AND number = $number",
            "session", "number", "reason");
        _correctShot = new(
            connection,
            $"UPDATE graded_shots SET {string.Join(", ", ShotColumns.Skip(2).Select(column => $"{column} = ${column}"))} "
            + "WHERE session_key = $session_key AND number = $number",
            ShotColumns);
        _blockOfShot = new(
            connection, "SELECT block_name, block_kind FROM graded_shots WHERE session_key = $session AND number = $number",
            "session", "number");
        _dropTargets = new(connection, "DELETE FROM shot_targets WHERE session_key = $session AND number = $number", "session", "number");
        _addTotals = new(
            connection,
            """
            UPDATE sessions SET shots = shots + $shots, points = points + $points, run = $run, block_name = $name, block_kind = $kind
            WHERE key = $session
            """,
            "session", "shots", "points", "run", "name", "kind");
        _countAgain = new(
            connection,
            """
            UPDATE sessions SET
                shots = (SELECT count(*) FROM graded_shots WHERE session_key = $session AND void_reason IS NULL),
                points = (SELECT coalesce(sum(points), 0) FROM graded_shots WHERE session_key = $session AND void_reason IS NULL)
            WHERE key = $session
            """,
            "session");
        _endSession = new(connection, "UPDATE sessions SET ended_at = $at WHERE key = $session", "session", "at");
    }

    /// <summary>Begins a transaction that may write.</summary>
    public void Begin() => _begin.Execute();

    /// <summary>Puts the transaction on the disk: when this returns, it survives a power cut.</summary>
    public void Commit() => _commit.Execute();

    /// <summary>Takes back whatever is not yet committed; SQLite may have done so itself.</summary>
    public void RollBack()
    {
        if (raw.sqlite3_get_autocommit(_connection.Handle) == 0)
        {
            SqliteDatabase.Execute(_connection, "ROLLBACK");
        }
    }

    /// <summary>How far a session has come, or null when there is none with this id.</summary>
    public SessionCursor? FindSession(string id) => _findSession.First(
        row => new SessionCursor
        {
            Key = row.GetInt64(0),
            BowlerId = row.GetInt64(1),
            BallId = row.IsDBNull(2) ? null : row.GetInt64(2),
            Simulated = row.GetBoolean(3),
            Run = row.IsDBNull(4) ? null : row.GetInt32(4),
            Block = BlockOf(row, 5),
            Sequence = row.GetInt64(7),
        },
        id);

    /// <summary>Keeps a step and what it adds up to.</summary>
    public void Keep(SessionCursor session, Work.Step step)
    {
        var entry = step.Entry;
        _addStep.Execute(session.Key, entry.Sequence, entry.Input.At.UtcDateTime, step.InputJson, step.EventsJson);
        var (shots, points, changed, countAgain) = (0, 0, false, false);
        foreach (var happened in entry.Events)
        {
            switch (happened)
            {
                case SessionEvent.BlockBegan began:
                    (session.Run, session.Block, changed) = (began.Run, (began.Name, began.BlockKind), true);
                    break;
                case SessionEvent.ShotGraded { Shot: var graded }:
                    AddShot(session, graded);
                    changed = true;
                    if (graded.VoidReason is null)
                    {
                        (shots, points) = (shots + 1, points + graded.Points);
                    }

                    break;
                case SessionEvent.ShotVoided voided:
                    _voidShot.Execute(session.Key, voided.Number, voided.Reason);
                    countAgain = true;
                    break;
                case SessionEvent.ShotCorrected { After: var after }:
                    Correct(session, after);
                    countAgain = true;
                    break;
                case SessionEvent.SessionEnded:
                    _endSession.Execute(session.Key, entry.Input.At.UtcDateTime);
                    break;
            }
        }

        if (changed)
        {
            var kind = session.Block is { } block ? EnumText<BlockKind>.Write(block.Kind) : null;
            _addTotals.Execute(session.Key, shots, points, session.Run, session.Block?.Name, kind);
        }

        if (countAgain)
        {
            _countAgain.Execute(session.Key);
        }

        session.Sequence = entry.Sequence;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var command in (ReadOnlySpan<PreparedCommand>)
            [
                _begin, _commit, _findSession, _addStep, _addShot, _addTarget, _addBall, _findBall, _voidShot, _correctShot, _blockOfShot,
                _dropTargets, _addTotals, _countAgain, _endSession,
            ])
        {
            command.Dispose();
        }
    }

    private static (string Name, BlockKind Kind)? BlockOf(SqliteDataReader row, int column) =>
        row.IsDBNull(column) ? null : (row.GetString(column), Enum.Parse<BlockKind>(row.GetString(column + 1), true));

    private void AddShot(SessionCursor session, GradedShot graded)
    {
        // A shot of a run whose beginning is not in the log has no known block; it is kept all the same.
        var block = graded.Run == session.Run ? session.Block : null;
        var row = GradedShotRow.Of(graded, session.Key, BallOf(session, graded), block, session.Simulated);
        _addShot.Execute(ValuesOf(row));
        AddTargets(row);
    }

    private void Correct(SessionCursor session, GradedShot after)
    {
        var block = _blockOfShot.First(row => new Box(BlockOf(row, 0)), session.Key, after.Number)?.Block;
        var row = GradedShotRow.Of(after, session.Key, BallOf(session, after), block, session.Simulated);
        if (_correctShot.Execute(ValuesOf(row)) == 1)
        {
            _dropTargets.Execute(session.Key, after.Number);
            AddTargets(row);
        }
    }

    private void AddTargets(GradedShotRow shot)
    {
        foreach (var target in shot.Targets)
        {
            _addTarget.Execute(
                target.SessionKey, target.Number, target.Position, target.Name, target.DistanceFeet, target.CentreBoard, target.WidthBoards,
                EnumText<CrossingKind>.Write(target.Crossing), target.CrossingBoard, target.MissBoards, target.Grade, target.Held,
                target.Points);
        }
    }

    private long? BallOf(SessionCursor session, GradedShot graded)
    {
        if ((graded.Compared?.Ball ?? graded.Shot.Ball) is not { } name || string.IsNullOrWhiteSpace(name))
        {
            return session.BallId;
        }

        if (!session.Balls.TryGetValue(name, out var id))
        {
            var key = NameKey.Of(name);
            _addBall.Execute(session.BowlerId, name, key);
            id = _findBall.First(row => new Box(Id: row.GetInt64(0)), session.BowlerId, key)!.Id;
            session.Balls.Add(name, id);
        }

        return id;
    }

    private static object?[] ValuesOf(GradedShotRow shot) =>
    [
        shot.SessionKey, shot.Number, shot.BallId, shot.At.UtcDateTime, shot.Run, shot.BlockName,
        shot.BlockKind is { } kind ? EnumText<BlockKind>.Write(kind) : null, shot.Aim, shot.Place, shot.Held, shot.Points,
        shot.Comparable, shot.VoidReason, shot.Simulated, shot.LaunchAngleDegrees, shot.LaunchAngleComputed, shot.LaydownBoard,
        shot.BreakpointBoard, shot.BreakpointFeet, shot.EntryBoard, shot.EntryAngleDegrees, shot.SpeedMph,
        shot.SpeedAt is { } place ? EnumText<SpeedPlace>.Write(place) : null, shot.RevsRpm, shot.AxisRotationDegrees,
        shot.AxisTiltDegrees, shot.Pins, shot.ShotJson,
    ];

    private sealed record Box((string Name, BlockKind Kind)? Block = null, long Id = 0);
}
