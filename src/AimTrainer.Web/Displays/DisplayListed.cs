using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>A display that has a token.</summary>
/// <param name="Id">The token's id.</param>
/// <param name="Name">What the coach calls the display.</param>
/// <param name="Station">Its station.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Since">Since when it has the token.</param>
/// <param name="Looking">How many programs look by this token now.</param>
public sealed record DisplayListed(string Id, string Name, int Station, ScreenKind Kind, DateTimeOffset Since, int Looking);
