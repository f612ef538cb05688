namespace AimTrainer.Domain;

/// <summary>Which ball of a comparison is thrown next, and how far each has come at this aim.</summary>
public sealed record BallTurn
{
    /// <summary>The ball that is due.</summary>
    public required ChosenBall Due { get; init; }

    /// <summary>Whether it is due to see if the lane has moved: the reference ball's check.</summary>
    public required bool IsCheck { get; init; }

    /// <summary>Which aim of the block, from 1.</summary>
    public required int Line { get; init; }

    /// <summary>How many there are.</summary>
    public required int Lines { get; init; }

    /// <summary>Each ball at this aim, in the drill's order.</summary>
    public required ValueList<BallCell> Balls { get; init; }
}
