namespace AimTrainer.Store;

/// <summary>The chain cannot be reached, or is not well: try again later.</summary>
public sealed class ChainAwayException : Exception
{
    /// <summary>Makes one without words; use the others.</summary>
    public ChainAwayException()
    {
    }

    /// <summary>Makes one.</summary>
    /// <param name="message">What happened and what to do, for a person.</param>
    public ChainAwayException(string message)
        : base(message)
    {
    }

    /// <summary>Makes one.</summary>
    /// <param name="message">What happened and what to do, for a person.</param>
    /// <param name="innerException">What the system said.</param>
    public ChainAwayException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    /// <summary>Whether it is there and knows no such call: it is of an older version.</summary>
    internal bool IsNoSuchCall { get; init; }
}
