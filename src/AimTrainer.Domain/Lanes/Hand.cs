namespace AimTrainer.Domain;

/// <summary>The hand that the bowler throws with: the edge from which boards are counted.</summary>
public enum Hand
{
    /// <summary>Boards count from the right edge.</summary>
    Right,

    /// <summary>Boards count from the left edge.</summary>
    Left,
}
