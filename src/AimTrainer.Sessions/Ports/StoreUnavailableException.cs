namespace AimTrainer.Sessions;

/// <summary>The store cannot keep what it was given: the disk is full, the folder is read-only, the file is held or broken.</summary>
public sealed class StoreUnavailableException : Exception
{
    /// <summary>Makes one without words; use the others.</summary>
    public StoreUnavailableException()
    {
    }

    /// <summary>Makes one.</summary>
    /// <param name="message">What happened, where, and what to do, for a person.</param>
    public StoreUnavailableException(string message)
        : base(message)
    {
    }

    /// <summary>Makes one.</summary>
    /// <param name="message">What happened, where, and what to do, for a person.</param>
    /// <param name="innerException">What the system said.</param>
    public StoreUnavailableException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
