using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>The tokens of feeds. The file is read again when another process changed it.</summary>
internal sealed class FeedTokens(string dataFolder, TimeProvider clock)
{
    /// <summary>Most tokens at once.</summary>
    public const int Most = 256;

    private readonly SecretFile _file = new(Path.Combine(dataFolder, "feed-tokens.json"));
    private readonly Lock _lock = new();
    private (DateTime WrittenAt, ValueList<FeedToken> Tokens) _known = (DateTime.MinValue, []);

    /// <summary>All of them, in the order they were made.</summary>
    public ValueList<FeedToken> All
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

    /// <summary>Makes one.</summary>
    /// <returns>The token as it is kept, and itself: it is never seen again. Null when there are too many.</returns>
    public (FeedToken Kept, string Token)? Make(string name, int station)
    {
        var token = $"feed-{Secrets.New()}";
        lock (_lock)
        {
            var all = All;
            if (all.Count >= Most)
            {
                return null;
            }

            var made = new FeedToken(Secrets.NewId(), name, station, Secrets.HashOf(token), clock.GetUtcNow());
            Save(all.AsEnumerable().Append(made).ToValueList());
            return (made, token);
        }
    }

    /// <summary>The token that hashes so, or null.</summary>
    public FeedToken? Find(string token)
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
            return true;
        }
    }

    private void Save(ValueList<FeedToken> tokens)
    {
        _file.Write(new Kept { Tokens = tokens });
        _known = (_file.WrittenAt, tokens);
    }

    private sealed record Kept
    {
        public required ValueList<FeedToken> Tokens { get; init; }
    }
}
