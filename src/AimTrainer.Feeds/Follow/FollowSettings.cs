namespace AimTrainer.Feeds;

/// <summary>How a file that grows is followed.</summary>
public sealed record FollowSettings
{
    /// <summary>How often to look; 250 ms by default.</summary>
    public TimeSpan Interval { get; init; } = TimeSpan.FromMilliseconds(250);

    /// <summary>
    /// Whether rows that are already there when following starts are passed over. A file that appears later, or takes the place
    /// of the first, is read from its top either way.
    /// </summary>
    public bool FromEnd { get; init; }

    /// <summary>
    /// After how many looks at a file that does not change a quote that is still open is taken as never closed, so that the rows
    /// after it are not held back; 8 by default, two seconds.
    /// </summary>
    public int LooksBeforeQuoteIsGivenUp { get; init; } = 8;
}
