namespace AimTrainer.Web;

/// <summary>The tokens of feeds.</summary>
/// <param name="dataFolder">Where they lie.</param>
/// <param name="clock">The time.</param>
internal sealed class FeedTokens(string dataFolder, TimeProvider clock) : KeptTokens<FeedToken>(Path.Combine(dataFolder, "feed-tokens.json"), "feed")
{
    /// <summary>Most tokens at once.</summary>
    public const int Most = 256;

    /// <inheritdoc cref="KeptTokens{TToken}.Make"/>
    public (FeedToken Kept, string Token)? Make(string name, int station) => Make(Most, (id, hash) => new FeedToken(id, name, station, hash, clock.GetUtcNow()));
}
