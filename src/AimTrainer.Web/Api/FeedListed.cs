namespace AimTrainer.Web;

/// <summary>A feed that has a token.</summary>
/// <param name="Id">The token's id.</param>
/// <param name="Name">What the coach calls the feed.</param>
/// <param name="Station">Its station.</param>
/// <param name="Since">Since when.</param>
public sealed record FeedListed(string Id, string Name, int Station, DateTimeOffset Since);
