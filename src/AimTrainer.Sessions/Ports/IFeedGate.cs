namespace AimTrainer.Sessions;

/// <summary>Decides which feed may send shots for which station.</summary>
public interface IFeedGate
{
    /// <summary>Looks at what a feed said of itself.</summary>
    /// <param name="token">Its token; null when it showed none.</param>
    /// <param name="station">The station it wants; null when it named none.</param>
    /// <param name="fromThisMachine">Whether it is on this machine.</param>
    /// <param name="from">Its address, for whoever keeps an account of who came.</param>
    FeedEntry Enter(string? token, int? station, bool fromThisMachine, string from);

    /// <summary>Whether a feed that was let in by a token still may: false once the token is revoked.</summary>
    bool Holds(FeedEntry entry);
}
