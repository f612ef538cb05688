using AimTrainer.Display;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>The host that a display looks at, and what it looks at there.</summary>
/// <param name="Server">Its address, as <c>http://10.0.0.5:5271</c>.</param>
/// <param name="Station">The station.</param>
/// <param name="Kind">What the display is.</param>
/// <param name="Token">What it shows the host; null where none is needed.</param>
internal sealed record DisplayHost(Uri Server, int Station, ScreenKind Kind, string? Token)
{
    /// <summary>Why its displays are dark until something was heard of it.</summary>
    public DarkReason.Waiting Waiting => new(Server.GetLeftPart(UriPartial.Authority));

    /// <summary>What of it may be said: not the token.</summary>
    public override string ToString() => $"station {Station} of {Server.GetLeftPart(UriPartial.Authority)}";
}
