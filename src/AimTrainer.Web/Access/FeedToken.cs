namespace AimTrainer.Web;

/// <summary>A token by which a feed may send shots of one station; the token itself is kept only as a hash.</summary>
/// <param name="Id">Its name for the audit.</param>
/// <param name="Name">What the coach calls the feed.</param>
/// <param name="Station">The one station.</param>
/// <param name="Hash">SHA-256 of the token.</param>
/// <param name="Since">When it was made.</param>
internal sealed record FeedToken(string Id, string Name, int Station, string Hash, DateTimeOffset Since) : IKeptToken;
