namespace AimTrainer.Web;

/// <summary>A token that was made; it is never shown again.</summary>
/// <param name="Display">What it is for.</param>
/// <param name="Token">The token.</param>
public sealed record DisplayTokenMade(DisplayListed Display, string Token);
