namespace AimTrainer.Sessions;

/// <summary>Takes people out of the record for good. What is erased cannot be had back but from a copy made before.</summary>
public interface IRecordErasure
{
    /// <summary>Erases everything of a bowler.</summary>
    /// <returns>What was erased; null when the record has none of this name, or, with the reason, when a session of the bowler is open on a lane.</returns>
    /// <exception cref="StoreUnavailableException">It could not be done, or not to the end: it may be tried again.</exception>
    Task<(Erased? Erased, string? Why)> EraseBowlerAsync(string bowler, CancellationToken cancellationToken);

    /// <summary>Erases the sessions that were set up before a time and are not open on a lane, and of their bowlers those of whom no session is left.</summary>
    /// <returns>What was erased; null when nothing is so old.</returns>
    /// <exception cref="StoreUnavailableException">It could not be done, or not to the end: it may be tried again.</exception>
    Task<Erased?> EraseBeforeAsync(DateTimeOffset before, CancellationToken cancellationToken);

    /// <summary>Erases what was erased before and is there again (a copy was put back), or was not erased to the end (a kill came in between).</summary>
    /// <returns>How many sessions were found again.</returns>
    /// <exception cref="StoreUnavailableException">It could not be done, or the list of erasures cannot be read: the message names the line.</exception>
    Task<int> EraseAgainAsync(CancellationToken cancellationToken);
}
