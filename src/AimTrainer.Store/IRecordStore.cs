using AimTrainer.Sessions;

namespace AimTrainer.Store;

/// <summary>A record as the program opens it, whichever database holds it.</summary>
public interface IRecordStore : ISessionStore, IPracticeRecord, IDisposable
{
    /// <summary>What people are told where the record is: a file, or a server and database; never a password.</summary>
    string Place { get; }

    /// <summary>The newest session of a station and how far its log has come, or null when the station has had none. Costs little.</summary>
    Task<SessionProgress?> NewestOfStationAsync(int station, CancellationToken cancellationToken);
}
