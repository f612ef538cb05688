namespace AimTrainer.Sessions;

/// <summary>What became of a feed that asked to be let in.</summary>
/// <param name="Station">The station it sends for; null when it is not let in.</param>
/// <param name="TokenId">The id of the token that it was let in by; null when it needed none.</param>
/// <param name="Why">Why it is not let in, and what to do; null when it is.</param>
public sealed record FeedEntry(int? Station, string? TokenId, string? Why)
{
    /// <summary>Not let in.</summary>
    public static FeedEntry No(string why) => new(null, null, why);
}
