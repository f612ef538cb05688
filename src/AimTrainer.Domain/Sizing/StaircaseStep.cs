namespace AimTrainer.Domain;

/// <summary>One step of a staircase.</summary>
public abstract record StaircaseStep
{
    /// <summary>The same number of boards at every width.</summary>
    /// <param name="Boards">More than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public sealed record ByBoards(BoardOffset Boards) : StaircaseStep
    {
        /// <summary>How far one step goes.</summary>
        public BoardOffset Boards { get; } = BoardOffset.FromBoards(Guard.Positive(Boards.Boards, nameof(Boards)));
    }

    /// <summary>The same factor at every width.</summary>
    /// <param name="Factor">More than 1, finite: wider is times this, narrower is divided by it.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public sealed record ByFactor(double Factor) : StaircaseStep
    {
        /// <summary>What one step multiplies or divides by.</summary>
        public double Factor { get; } = Factor > 1 && Factor <= double.MaxValue
            ? Factor
            : throw new ArgumentOutOfRangeException(nameof(Factor), Factor, "allowed: more than 1, finite");
    }
}
