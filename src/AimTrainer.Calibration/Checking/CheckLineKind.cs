namespace AimTrainer.Calibration;

/// <summary>What a line of the check picture shows.</summary>
public enum CheckLineKind
{
    /// <summary>An edge of the lane.</summary>
    Edge,

    /// <summary>The foul line.</summary>
    FoulLine,

    /// <summary>The middle of a board, down the lane.</summary>
    Board,

    /// <summary>A distance, across the lane.</summary>
    Distance,

    /// <summary>The outline of an arrow.</summary>
    Arrow,

    /// <summary>The outline of a dot.</summary>
    Dot,

    /// <summary>A cross on a mark beyond the arrows.</summary>
    Downlane,
}
