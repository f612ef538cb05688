using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>Where the order of each lane is kept, so that a restart goes on with whose turn it is.</summary>
public interface ILineupKeeper
{
    /// <summary>Keeps an order in the place of the lane's last one.</summary>
    /// <param name="lineup">The order.</param>
    /// <param name="durable">Whether it must be on the disk before this returns: what people changed must, what shots moved can be worked out again.</param>
    /// <exception cref="StoreUnavailableException">It cannot be kept; the last one still is.</exception>
    void Keep(Lineup lineup, bool durable);

    /// <summary>The order of a lane; null when it has none.</summary>
    /// <exception cref="StoreUnavailableException">It cannot be read.</exception>
    Lineup? Find(int station);

    /// <summary>The lane has no order any more.</summary>
    /// <exception cref="StoreUnavailableException">It cannot be removed.</exception>
    void Drop(int station);
}
