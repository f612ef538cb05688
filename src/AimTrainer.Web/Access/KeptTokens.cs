using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>Tokens of one sort, kept as hashes in a file that only its owner reads. The file is read again when another process changed it.</summary>
/// <typeparam name="TToken">A token as it is kept.</typeparam>
/// <param name="file">The file.</param>
/// <param name="prefix">What every token of the sort begins with, so that a person sees what it is for.</param>
internal abstract class KeptTokens<TToken>(string file, string prefix)
    where TToken : class, IKeptToken
{
    private readonly SecretFile _file = new(file);
    private readonly Lock _lock = new();
    private (DateTime WrittenAt, ValueList<TToken> Tokens) _known = (DateTime.MinValue, []);

    /// <summary>All of them, in the order they were made.</summary>
    public ValueList<TToken> All
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

    /// <summary>The token that hashes so, or null.</summary>
    public TToken? Find(string token)
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

    /// <summary>Makes one.</summary>
    /// <param name="most">Most tokens at once.</param>
    /// <param name="kept">The token as it is kept, from its id and hash.</param>
    /// <returns>The token as it is kept, and itself: it is never seen again. Null when there are too many.</returns>
    protected (TToken Kept, string Token)? Make(int most, Func<string, string, TToken> kept)
    {
        var token = $"{prefix}-{Secrets.New()}";
        lock (_lock)
        {
            var all = All;
            if (all.Count >= most)
            {
                return null;
            }

            var made = kept(Secrets.NewId(), Secrets.HashOf(token));
            Save(all.AsEnumerable().Append(made).ToValueList());
            return (made, token);
        }
    }

    private void Save(ValueList<TToken> tokens)
    {
        _file.Write(new Kept { Tokens = tokens });
        _known = (_file.WrittenAt, tokens);
    }

    private sealed record Kept
    {
        public required ValueList<TToken> Tokens { get; init; }
    }
}
