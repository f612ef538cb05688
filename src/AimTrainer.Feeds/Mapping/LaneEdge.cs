namespace AimTrainer.Feeds;

/// <summary>The edge of the lane from which a file counts, seen from the approach.</summary>
public enum LaneEdge
{
    /// <summary>The bowler's ball-hand edge, as everywhere in this program.</summary>
    Hand,

    /// <summary>The left edge, whoever bowls.</summary>
    Left,

    /// <summary>The right edge, whoever bowls.</summary>
    Right,
}
