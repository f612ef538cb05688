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
    /// Takes sessions out of the record for good, and bowlers with their balls who have none left: what <see cref="Forgetting"/> does on
    /// a person's wish. Sessions that are not there are passed over.
    /// </summary>
    Task EraseAsync(ValueList<string> sessionIds, CancellationToken cancellationToken);
}
