using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>A display's token as the display's own machine keeps it.</summary>
/// <param name="Server">The host, as <c>http://10.0.0.5:5271</c>.</param>
/// <param name="Station">The station.</param>
/// <param name="Kind">What the display is.</param>
/// <param name="Token">The token itself: the display must show it to the host.</param>
internal sealed record HeldToken(string Server, int Station, ScreenKind Kind, string Token);
