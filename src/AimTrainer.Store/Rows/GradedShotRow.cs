using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>
/// A graded shot as it stands now, after every void and correction: worked out from the log, for questions over many sessions.
/// What was not measured is null.
/// </summary>
public sealed class GradedShotRow
{
    /// <summary>Which session.</summary>
    public required long SessionKey { get; init; }

    /// <summary>Its number in the session, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>The ball: in a comparison the one that was thrown; else the one the shot names, else the session's.</summary>
    public long? BallId { get; init; }

    /// <summary>When it came in.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The run of its block, from 0.</summary>
    public required int Run { get; init; }

    /// <summary>The name of its block.</summary>
    public string? BlockName { get; init; }

    /// <summary>The kind of its block.</summary>
    public BlockKind? BlockKind { get; init; }

    /// <summary>What it was thrown at.</summary>
    public required string Aim { get; init; }

    /// <summary>For a walking line the place it was thrown at, from 1; else 0.</summary>
    public required int Place { get; init; }

    /// <summary>Whether the aim was held; null when that was not measured.</summary>
    public bool? Held { get; init; }

    /// <summary>Points of all targets.</summary>
    public required int Points { get; init; }

    /// <summary>Whether it counts as the same throw; null when that is not known.</summary>
    public bool? Comparable { get; init; }

    /// <summary>Why it does not count; null when it does.</summary>
    public string? VoidReason { get; init; }

    /// <summary>Whether the shot or its whole session is simulated.</summary>
    public required bool Simulated { get; init; }

    /// <summary>Degrees, positive outward, reported or computed.</summary>
    public double? LaunchAngleDegrees { get; init; }

    /// <summary>Whether the launch angle was computed.</summary>
    public bool? LaunchAngleComputed { get; init; }

    /// <summary>Board at the foul line.</summary>
    public double? LaydownBoard { get; init; }

    /// <summary>Board of the breakpoint.</summary>
    public double? BreakpointBoard { get; init; }

    /// <summary>Distance of the breakpoint, feet.</summary>
    public double? BreakpointFeet { get; init; }

    /// <summary>Board at 60 ft.</summary>
    public double? EntryBoard { get; init; }

    /// <summary>Degrees, positive into the pocket.</summary>
    public double? EntryAngleDegrees { get; init; }

    /// <summary>Miles per hour.</summary>
    public double? SpeedMph { get; init; }

    /// <summary>Where the speed was measured.</summary>
    public SpeedPlace? SpeedAt { get; init; }

    /// <summary>Revolutions per minute.</summary>
    public double? RevsRpm { get; init; }

    /// <summary>Degrees.</summary>
    public double? AxisRotationDegrees { get; init; }

    /// <summary>Degrees.</summary>
    public double? AxisTiltDegrees { get; init; }

    /// <summary>Pins knocked down.</summary>
    public int? Pins { get; init; }

    /// <summary>The whole <see cref="Shot"/> as observed, with every crossing.</summary>
    public required string ShotJson { get; init; }

    /// <summary>The session it belongs to.</summary>
    public SessionRow? Session { get; init; }

    /// <summary>How its targets were crossed, nearest first.</summary>
    public List<ShotTargetRow> Targets { get; } = [];

    /// <summary>The row of a shot.</summary>
    /// <param name="graded">The shot and its grades.</param>
    /// <param name="sessionKey">Which session.</param>
    /// <param name="ballId">The ball's row.</param>
    /// <param name="block">The block of its run, when that is known.</param>
    /// <param name="simulatedSession">Whether the whole session is simulated.</param>
    public static GradedShotRow Of(
        GradedShot graded, long sessionKey, long? ballId, (string Name, BlockKind Kind)? block, bool simulatedSession)
    {
        var shot = graded.Shot;
        var row = new GradedShotRow
        {
            SessionKey = sessionKey,
            Number = graded.Number,
            BallId = ballId,
            At = graded.At,
            Run = graded.Run,
            BlockName = block?.Name,
            BlockKind = block?.Kind,
            Aim = graded.Aim,
            Place = graded.Place,
            Held = graded.Held,
            Points = graded.Points,
            Comparable = graded.Comparability.IsComparable,
            VoidReason = graded.VoidReason,
            Simulated = simulatedSession || shot.Source == ShotSource.Simulated,
            LaunchAngleDegrees = graded.LaunchAngle?.Angle.Value,
            LaunchAngleComputed = graded.LaunchAngle?.Computed,
            LaydownBoard = shot.Laydown?.Boards,
            BreakpointBoard = shot.Breakpoint?.Board.Boards,
            BreakpointFeet = shot.Breakpoint?.Distance?.Value,
            EntryBoard = shot.Entry?.Boards,
            EntryAngleDegrees = shot.EntryAngle?.Value,
            SpeedMph = shot.Speed?.Value.Value,
            SpeedAt = shot.Speed?.Place,
            RevsRpm = shot.Revs?.Value,
            AxisRotationDegrees = shot.AxisRotation?.Value,
            AxisTiltDegrees = shot.AxisTilt?.Value,
            Pins = shot.Pins,
            ShotJson = JsonSerializer.Serialize(shot, DomainJson.Options),
        };
        for (var i = 0; i < graded.Targets.Count; i++)
        {
            row.Targets.Add(ShotTargetRow.Of(sessionKey, graded.Number, i, graded.Targets[i]));
        }

        return row;
    }
}
