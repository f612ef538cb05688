namespace AimTrainer.Sessions;

/// <summary>The first event of a display's stream: who speaks to whom.</summary>
/// <param name="Protocol">What the host speaks; a display that speaks another shows nothing of it.</param>
/// <param name="Version">The host's version, for people.</param>
/// <param name="Station">The station, from 1.</param>
/// <param name="Kind">What the display is.</param>
public sealed record DisplayHello(int Protocol, string Version, int Station, ScreenKind Kind)
{
    /// <summary>What this program speaks. It grows when an older display could read a stream wrongly.</summary>
    public const int Spoken = 2;
}
