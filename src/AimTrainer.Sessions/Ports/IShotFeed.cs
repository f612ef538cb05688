namespace AimTrainer.Sessions;

/// <summary>A place that shots come from: a file, a keypad, a sensor, the simulated bowler.</summary>
public interface IShotFeed
{
    /// <summary>What people call it, for messages.</summary>
    string Name { get; }

    /// <summary>
    /// Everything it has, as it comes: shots, and what could not be read. Ends when the source does; a source that may go on
    /// ends only when cancelled. Never throws for what is wrong in the source: that is a <see cref="FeedItem.Unreadable"/>.
    /// </summary>
    IAsyncEnumerable<FeedItem> ReadAsync(CancellationToken cancellationToken);
}
