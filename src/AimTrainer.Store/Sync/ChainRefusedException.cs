namespace AimTrainer.Store;

/// <summary>The chain takes nothing from this center until somebody does something.</summary>
public sealed class ChainRefusedException : Exception
{
    /// <summary>Makes one without words; use the others.</summary>
    public ChainRefusedException()
    {
    }

    /// <summary>Makes one.</summary>
    /// <param name="message">What happened and what to do, for a person.</param>
    public ChainRefusedException(string message)
        : base(message)
    {
    }

    /// <summary>Makes one.</summary>
    /// <param name="message">What happened and what to do, for a person.</param>
    /// <param name="innerException">What the system said.</param>
    public ChainRefusedException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
