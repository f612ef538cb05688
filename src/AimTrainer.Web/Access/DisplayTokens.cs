using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>The tokens of displays.</summary>
/// <param name="dataFolder">Where they lie.</param>
/// <param name="clock">The time.</param>
internal sealed class DisplayTokens(string dataFolder, TimeProvider clock) : KeptTokens<DisplayToken>(Path.Combine(dataFolder, "display-tokens.json"), "display")
{
    /// <summary>Most tokens at once: two displays at each of 64 stations, and as many again.</summary>
    public const int Most = 256;

    /// <inheritdoc cref="KeptTokens{TToken}.Make"/>
    public (DisplayToken Kept, string Token)? Make(string name, int station, ScreenKind kind) =>
        Make(Most, (id, hash) => new DisplayToken(id, name, station, kind, hash, clock.GetUtcNow()));
}
