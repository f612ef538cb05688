namespace AimTrainer.Domain;

/// <summary>When the bowler is told.</summary>
public abstract record FeedbackWhen
{
    /// <summary>After every shot.</summary>
    public sealed record Every : FeedbackWhen;

    /// <summary>After a share of the shots that falls evenly over the block.</summary>
    /// <param name="FirstShare">Share at the first shot, 0 to 1.</param>
    /// <param name="LastShare">Share at the last shot, 0 to the first share.</param>
    /// <param name="OverShots">Shots over which it falls, 1 or more.</param>
    public sealed record Fading(double FirstShare, double LastShare, int OverShots) : FeedbackWhen;

    /// <summary>Size and side only when a target was not held; else only that it was.</summary>
    public sealed record Outside : FeedbackWhen;

    /// <summary>All results at once, after every so many shots.</summary>
    /// <param name="Shots">1 or more.</param>
    public sealed record Summary(int Shots) : FeedbackWhen;

    /// <summary>Never.</summary>
    public sealed record None : FeedbackWhen;
}
