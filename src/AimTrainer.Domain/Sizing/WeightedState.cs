namespace AimTrainer.Domain;

/// <summary>What a weighted rule knows of one target.</summary>
public sealed record WeightedState : SizingState
{
    internal WeightedState(BoardOffset width, double log2Boards)
        : base(width) => Log2Boards = log2Boards;

    /// <summary>Logarithm to base 2 of the width in boards, before rounding, within the rule's limits: the steps are taken from here.</summary>
    public double Log2Boards { get; }
}
