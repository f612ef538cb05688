using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>The tokens of displays. The file is read again when another process changed it.</summary>
/// <param name="dataFolder">Where it lies.</param>
/// <param name="clock">The time.</param>
internal sealed class DisplayTokens(string dataFolder, TimeProvider clock)
{
    /// <summary>Most tokens at once: two displays at each of 64 stations, and as many again.</summary>
    public const int Most = 256;

    private readonly SecretFile _file = new(Path.Combine(dataFolder, "display-tokens.json"));
    private readonly Lock _lock = new();
    private (DateTime WrittenAt, ValueList<DisplayToken> Tokens) _known = (DateTime.MinValue, []);

    /// <summary>All of them, in the order they were made.</summary>
    public ValueList<DisplayToken> All
    {
        get
        {
            var writtenAt = _file.WrittenAt;
            lock (_lock)
            {
                if (writtenAt != _known.WrittenAt)
                {
                    _known = (writtenAt, _file.Read<Kept>()?.Tokens ?? []);
                }

                return _known.Tokens;
            }
        }
    }

    /// <summary>Raised when one was taken back, so that open streams look whether it was theirs.</summary>
    public ChangeSignal Revoked { get; } = new();

    /// <summary>Makes one.</summary>
    /// <returns>The token as it is kept, and itself: it is never seen again. Null when there are too many.</returns>
    public (DisplayToken Kept, string Token)? Make(string name, int station, ScreenKind kind)
    {
        var token = $"display-{Secrets.New()}";
        lock (_lock)
        {
            var all = All;
            if (all.Count >= Most)
            {
                return null;
            }

            var made = new DisplayToken(Secrets.NewId(), name, station, kind, Secrets.HashOf(token), clock.GetUtcNow());
            Save(all.AsEnumerable().Append(made).ToValueList());
            return (made, token);
        }
    }

    /// <summary>The token that hashes so, or null.</summary>
    public DisplayToken? Find(string token)
    {
        var hash = Secrets.HashOf(token);
        return All.AsEnumerable().FirstOrDefault(known => known.Hash == hash);
    }

    /// <summary>Whether there still is one of this id.</summary>
    public bool IsGood(string id) => All.AsEnumerable().Any(token => token.Id == id);

    /// <summary>Takes one back.</summary>
    /// <returns>Whether there was one.</returns>
    public bool Revoke(string id)
    {
        lock (_lock)
        {
            var all = All;
            var left = all.AsEnumerable().Where(token => token.Id != id).ToValueList();
            if (left.Count == all.Count)
            {
                return false;
            }

            Save(left);
        }

        Revoked.Raise();
        return true;
    }

    private void Save(ValueList<DisplayToken> tokens)
    {
        _file.Write(new Kept { Tokens = tokens });
        _known = (_file.WrittenAt, tokens);
    }

    private sealed record Kept
    {
        public required ValueList<DisplayToken> Tokens { get; init; }
    }
}
