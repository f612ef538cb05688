namespace AimTrainer.Domain;

/// <summary>One step of a staircase.</summary>
public abstract record StaircaseStep
{
    /// <summary>The same number of boards at every width.</summary>
    /// <param name="Boards">More than 0.</param>
    public sealed record ByBoards(BoardOffset Boards) : StaircaseStep;

    /// <summary>The same factor at every width.</summary>
    /// <param name="Factor">More than 1: wider is times this, narrower is divided by it.</param>
    public sealed record ByFactor(double Factor) : StaircaseStep;
}
