using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Store;

/// <summary>A record as the program opens it, whichever database holds it.</summary>
public interface IRecordStore : ISessionStore, IPracticeRecord, IBallRecord, IDisposable
{
    /// <summary>What people are told where the record is: a file, or a server and database; never a password.</summary>
    string Place { get; }

    /// <summary>The newest session of a station and how far its log has come, or null when the station has had none. Costs little.</summary>
    Task<SessionProgress?> NewestOfStationAsync(int station, CancellationToken cancellationToken);

    /// <summary>Any question to the tables, for reading.</summary>
    /// <exception cref="StoreUnavailableException">The record cannot be read.</exception>
    Task<T> AskAsync<T>(Func<RecordContext, Task<T>> question, CancellationToken cancellationToken);

    /// <summary>
    /// Takes rows out of the record for good, and bowlers of whom no session is left with all that is theirs. For <see cref="RecordErasure"/>,
    /// which remembers what went.
    /// </summary>
    /// <param name="scope">What goes.</param>
    /// <param name="beforeCommit">Told the ids of the sessions before any of it counts, and only when something goes; when it throws, nothing goes.</param>
    /// <param name="cancellationToken">Ends the wait for a turn; what has begun is seen through.</param>
    /// <exception cref="StoreUnavailableException">It could not be done; or the rows are gone and traces of them are left, as the message then says.</exception>
    Task<ErasedRows> EraseAsync(ErasureScope scope, Action<ValueList<string>> beforeCommit, CancellationToken cancellationToken);
}
