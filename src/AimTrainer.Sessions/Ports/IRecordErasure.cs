namespace AimTrainer.Sessions;

/// <summary>Takes people out of the record for good. What is erased cannot be had back but from a copy made before.</summary>
public interface IRecordErasure
{
    /// <summary>Erases everything of a bowler; null when the record has none of this name.</summary>
    /// <exception cref="StoreUnavailableException">It could not be done, or not to the end: nothing is taken out by halves, and it may be tried again.</exception>
    Task<Erased?> EraseBowlerAsync(string bowler, CancellationToken cancellationToken);

    /// <summary>Erases the sessions that were set up before a time, and bowlers of whom nothing is left.</summary>
    Task<Erased> EraseBeforeAsync(DateTimeOffset before, CancellationToken cancellationToken);
}
