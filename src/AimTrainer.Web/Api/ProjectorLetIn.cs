namespace AimTrainer.Web;

/// <summary>A projector's calibration was let in; the token is never shown again.</summary>
/// <param name="Token">What it sends as <c>Authorization: Bearer ...</c>.</param>
/// <param name="Station">The one station.</param>
/// <param name="Until">When it ends.</param>
public sealed record ProjectorLetIn(string Token, int Station, DateTimeOffset Until);
