using System.Data.Common;
using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>Keeps a step and what it adds up to. Throws what the database throws.</summary>
/// <param name="statements">The connection, in a transaction.</param>
internal sealed class StepKeeper(StepStatements statements)
{
    /// <summary>How far a session has come, or null when there is none with this id.</summary>
    public SessionCursor? FindSession(string id) => statements.First(
        StepStatement.FindSession,
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
        statements.Run(
            StepStatement.AddStep, session.Key, step.Entry.Sequence, step.Entry.Input.At.UtcDateTime, step.InputJson, step.EventsJson);
        AddUp(session, step.Entry);
    }

    /// <summary>Keeps what a step adds up to; the step itself is in the log.</summary>
    public void AddUp(SessionCursor session, LogEntry entry)
    {
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
                    statements.Run(StepStatement.VoidShot, session.Key, voided.Number, voided.Reason);
                    countAgain = true;
                    break;
                case SessionEvent.ShotCorrected { After: var after }:
                    Correct(session, after);
                    countAgain = true;
                    break;
                case SessionEvent.SessionEnded:
                    statements.Run(StepStatement.EndSession, session.Key, entry.Input.At.UtcDateTime);
                    break;
            }
        }

        if (changed)
        {
            var kind = session.Block is { } block ? EnumText<BlockKind>.Write(block.Kind) : null;
            statements.Run(StepStatement.AddTotals, session.Key, shots, points, session.Run, session.Block?.Name, kind);
        }

        if (countAgain)
        {
            statements.Run(StepStatement.CountAgain, session.Key);
        }

        session.Sequence = entry.Sequence;
    }

    private static (string Name, BlockKind Kind)? BlockOf(DbDataReader row, int column) =>
        row.IsDBNull(column) ? null : (row.GetString(column), Enum.Parse<BlockKind>(row.GetString(column + 1), true));

    private void AddShot(SessionCursor session, GradedShot graded)
    {
        // A shot of a run whose beginning is not in the log has no known block; it is kept all the same.
        var block = graded.Run == session.Run ? session.Block : null;
        var row = GradedShotRow.Of(graded, session.Key, BallOf(session, graded), block, session.Simulated);
        statements.Run(StepStatement.AddShot, ValuesOf(row));
        AddTargets(row);
    }

    private void Correct(SessionCursor session, GradedShot after)
    {
        var block = statements.First(StepStatement.BlockOfShot, row => new Box(BlockOf(row, 0)), session.Key, after.Number)?.Block;
        var row = GradedShotRow.Of(after, session.Key, BallOf(session, after), block, session.Simulated);
        if (statements.RunNow(StepStatement.CorrectShot, ValuesOf(row)) == 1)
        {
            statements.Run(StepStatement.DropTargets, session.Key, after.Number);
            AddTargets(row);
        }
    }

    private void AddTargets(GradedShotRow shot)
    {
        foreach (var target in shot.Targets)
        {
            statements.Run(
                StepStatement.AddTarget,
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
            statements.Run(StepStatement.AddBall, session.BowlerId, name, key);
            id = statements.First(StepStatement.FindBall, row => new Box(Id: row.GetInt64(0)), session.BowlerId, key)!.Id;
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
