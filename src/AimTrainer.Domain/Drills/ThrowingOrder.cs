namespace AimTrainer.Domain;

/// <summary>Which ball of a comparison is thrown after which.</summary>
public abstract record ThrowingOrder
{
    /// <summary>One throw with each ball in turn: A B A B, and of three balls A B C A B C.</summary>
    public sealed record Alternate : ThrowingOrder;

    /// <summary>There and back: A B B A, and of three balls A B C C B A. A lane that changes evenly then favours no ball.</summary>
    public sealed record Mirrored : ThrowingOrder;

    /// <summary>So many throws with one ball, then as many with the next.</summary>
    /// <param name="Throws">Throws in a row, 1 or more.</param>
    public sealed record Blocks(int Throws) : ThrowingOrder;
}
