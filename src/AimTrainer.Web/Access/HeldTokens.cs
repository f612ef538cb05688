using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>The tokens that displays of this machine show to hosts elsewhere: in a file that only its owner may read.</summary>
public sealed class HeldTokens
{
    private readonly SecretFile _file;

    /// <summary>The tokens of a data folder.</summary>
    public HeldTokens(string dataFolder) => _file = new SecretFile(Path.Combine(dataFolder, "held-tokens.json"));

    /// <summary>The file.</summary>
    public string Name => _file.Name;

    /// <summary>The token for a display, or null.</summary>
    /// <exception cref="InvalidDataException">The file holds something else.</exception>
    public string? Find(Uri server, int station, ScreenKind kind) => All().FirstOrDefault(held => Is(held, server, station, kind))?.Token;

    /// <summary>Keeps one, in the place of an earlier one for the same display.</summary>
    /// <exception cref="InvalidDataException">The file holds something else.</exception>
    /// <exception cref="IOException">It cannot be written.</exception>
    public void Keep(Uri server, int station, ScreenKind kind, string token) => _file.Write(new Kept
    {
        Tokens = All().Where(held => !Is(held, server, station, kind)).Append(new HeldToken(Of(server), station, kind, token)).ToValueList(),
    });

    /// <summary>The hosts that there are tokens for, each once.</summary>
    /// <exception cref="InvalidDataException">The file holds something else.</exception>
    public IReadOnlyList<Uri> Servers() =>
        [.. All().Select(held => held.Server).Distinct(StringComparer.Ordinal).Select(server => Uri.TryCreate(server, UriKind.Absolute, out var address) ? address : null).OfType<Uri>()];

    private static string Of(Uri server) => server.GetLeftPart(UriPartial.Authority);

    private static bool Is(HeldToken held, Uri server, int station, ScreenKind kind) => held.Server == Of(server) && held.Station == station && held.Kind == kind;

    private IEnumerable<HeldToken> All() => _file.Read<Kept>()?.Tokens.AsEnumerable() ?? [];

    private sealed record Kept
    {
        public required ValueList<HeldToken> Tokens { get; init; }
    }
}
