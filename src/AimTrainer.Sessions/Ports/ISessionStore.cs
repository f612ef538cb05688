using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>
/// Where sessions are kept. When a task that writes has completed, what it wrote survives a kill and a power cut; when it
/// throws <see cref="StoreUnavailableException"/>, nothing of it was kept.
/// </summary>
public interface ISessionStore
{
    /// <summary>Keeps a new session, its drill as it is (once by content), and its bowler and ball when they are new.</summary>
    /// <exception cref="InvalidOperationException">There is a session with this id.</exception>
    Task CreateAsync(SessionSetup setup, DrillSource drill, CancellationToken cancellationToken);

    /// <summary>Keeps one step. Steps of one session come in order; steps of many sessions may be kept together.</summary>
    /// <exception cref="InvalidOperationException">The step is not the next one of its session.</exception>
    Task AppendAsync(string sessionId, LogEntry entry, CancellationToken cancellationToken);

    /// <summary>A session by its id, or null.</summary>
    Task<StoredSession?> FindAsync(string sessionId, CancellationToken cancellationToken);

    /// <summary>The steps of a session, in order.</summary>
    /// <param name="sessionId">The session.</param>
    /// <param name="after">Only those with a higher sequence; 0 for all.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    IAsyncEnumerable<LogEntry> ReadLogAsync(string sessionId, long after, CancellationToken cancellationToken);

    /// <summary>The sessions of a filter, newest first.</summary>
    Task<ValueList<SessionListing>> ListAsync(SessionFilter filter, CancellationToken cancellationToken);

    /// <summary>What the record knows of a bowler (name without regard to case), or null.</summary>
    Task<BowlerRecord?> FindBowlerAsync(string name, CancellationToken cancellationToken);

    /// <summary>All bowlers, those who threw last first.</summary>
    /// <param name="most">At most so many, 1 or more.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    Task<ValueList<BowlerListing>> ListBowlersAsync(int most, CancellationToken cancellationToken);
}
