namespace AimTrainer.Analysis;

/// <summary>By what shots are put together.</summary>
public enum Grouping
{
    /// <summary>The session.</summary>
    Session,

    /// <summary>The drill.</summary>
    Drill,

    /// <summary>The block of the drill.</summary>
    Block,

    /// <summary>The ball.</summary>
    Ball,

    /// <summary>What was thrown at: the places of the targets.</summary>
    Line,

    /// <summary>The part of the lane in which the first target lies: outside, track or inside.</summary>
    LanePart,

    /// <summary>Speed in whole miles per hour, apart for every place where it was measured.</summary>
    SpeedBand,

    /// <summary>Ten shots after the other within a session: early to late.</summary>
    Ten,
}
