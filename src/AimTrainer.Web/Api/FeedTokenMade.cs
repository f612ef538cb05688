namespace AimTrainer.Web;

/// <summary>A token that was made; it is never shown again.</summary>
/// <param name="Feed">What it is for.</param>
/// <param name="Token">The token.</param>
public sealed record FeedTokenMade(FeedListed Feed, string Token);
