namespace AimTrainer.Feeds;

/// <summary>What a column of a shot file holds; see <c>docs/shots.md</c>.</summary>
public enum ShotColumn
{
    /// <summary>Nothing that is read.</summary>
    Ignore,

    /// <summary>The sender's own name for the shot.</summary>
    Id,

    /// <summary>When it was thrown.</summary>
    Time,

    /// <summary>Who threw it.</summary>
    Bowler,

    /// <summary>With which hand.</summary>
    Hand,

    /// <summary>The ball's name.</summary>
    Ball,

    /// <summary>The name of the line that was thrown at.</summary>
    Line,

    /// <summary>Board at the foul line.</summary>
    LaydownBoard,

    /// <summary>Board at the arrows, at the distance of the lane profile.</summary>
    ArrowsBoard,

    /// <summary>Board where the ball was farthest outside.</summary>
    BreakpointBoard,

    /// <summary>Distance of the breakpoint.</summary>
    BreakpointFeet,

    /// <summary>Board at 60 ft.</summary>
    EntryBoard,

    /// <summary>Board at the distance that the heading or the mapping gives.</summary>
    BoardAt,

    /// <summary>Speed.</summary>
    SpeedMph,

    /// <summary>Where the speed was measured.</summary>
    SpeedAt,

    /// <summary>Rev rate.</summary>
    RevsRpm,

    /// <summary>Axis rotation.</summary>
    AxisRotationDeg,

    /// <summary>Axis tilt.</summary>
    AxisTiltDeg,

    /// <summary>Launch angle, positive outward.</summary>
    LaunchAngleDeg,

    /// <summary>Entry angle, positive into the pocket.</summary>
    EntryAngleDeg,

    /// <summary>Pins knocked down.</summary>
    Pins,

    /// <summary>Anything else.</summary>
    Note,
}
