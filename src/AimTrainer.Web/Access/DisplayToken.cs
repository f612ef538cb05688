using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>A token by which one display on another machine may look at one station; the token itself is kept only as a hash.</summary>
/// <param name="Id">Its name for the audit.</param>
/// <param name="Name">What the coach calls the display.</param>
/// <param name="Station">The one station.</param>
/// <param name="Kind">What the display is; it gets no other.</param>
/// <param name="Hash">SHA-256 of the token.</param>
/// <param name="Since">When it was made.</param>
internal sealed record DisplayToken(string Id, string Name, int Station, ScreenKind Kind, string Hash, DateTimeOffset Since) : IKeptToken;
