using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>One thing from a feed.</summary>
public abstract record FeedItem
{
    /// <summary>A shot.</summary>
    /// <param name="Shot">What was observed.</param>
    /// <param name="Bowler">Who threw it, when the source says so.</param>
    /// <param name="Hand">With which hand, when the source says so.</param>
    /// <param name="Line">Line in the source, from 1; 0 when it has none.</param>
    public sealed record ShotRead(Shot Shot, string? Bowler, Hand? Hand, int Line) : FeedItem
    {
        /// <summary>The name of the line that was thrown at, when the source says so.</summary>
        public string? LineName { get; init; }
    }

    /// <summary>Something that could not be read; the rest goes on.</summary>
    public sealed record Unreadable(FileProblem Problem) : FeedItem;
}
