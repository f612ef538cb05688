using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>The passes of browsers: who signed in as the coach, and which phones are paired to which station. They outlive a restart.</summary>
internal sealed class Passes
{
    /// <summary>How long a coach stays signed in.</summary>
    public static readonly TimeSpan CoachFor = TimeSpan.FromDays(7);

    /// <summary>How long a phone stays paired, and a projector let in.</summary>
    public static readonly TimeSpan PairedFor = TimeSpan.FromHours(12);

    /// <summary>Most passes at once; one more ends the oldest.</summary>
    private const int Most = 512;

    private readonly SecretFile _file;
    private readonly Passphrase _passphrase;
    private readonly TimeProvider _clock;
    private readonly Lock _lock = new();
    private readonly Dictionary<string, Pass> _byHash;

    public Passes(string dataFolder, Passphrase passphrase, TimeProvider clock)
    {
        (_file, _passphrase, _clock) = (new SecretFile(Path.Combine(dataFolder, "passes.json")), passphrase, clock);
        _byHash = (_file.Read<Kept>()?.Passes ?? []).AsEnumerable().ToDictionary(pass => pass.Hash, StringComparer.Ordinal);
    }

    /// <summary>Gives a pass.</summary>
    /// <returns>The pass, and the secret that the browser keeps.</returns>
    public (Pass Pass, string Secret) Give(Role role, int? station)
    {
        var secret = Secrets.New();
        var now = _clock.GetUtcNow();
        var pass = new Pass(
            Secrets.NewId(), Secrets.HashOf(secret), role, station, now, now + (role == Role.Coach ? CoachFor : PairedFor), role == Role.Coach ? _passphrase.Stamp : null);
        lock (_lock)
        {
            foreach (var over in _byHash.Values.Where(other => !Holds(other)).ToList())
            {
                _byHash.Remove(over.Hash);
            }

            if (_byHash.Count >= Most)
            {
                _byHash.Remove(_byHash.Values.MinBy(other => other.Since)!.Hash);
            }

            _byHash.Add(pass.Hash, pass);
            Save();
        }

        return (pass, secret);
    }

    /// <summary>The pass of a secret, when it still holds.</summary>
    public Pass? Find(string secret)
    {
        lock (_lock)
        {
            return _byHash.TryGetValue(Secrets.HashOf(secret), out var pass) && Holds(pass) ? pass : null;
        }
    }

    /// <summary>Whether a pass still holds.</summary>
    public bool IsGood(string id)
    {
        lock (_lock)
        {
            return _byHash.Values.FirstOrDefault(pass => pass.Id == id) is { } pass && Holds(pass);
        }
    }

    /// <summary>The passes that were given for a code and hold, newest first.</summary>
    public IReadOnlyList<Pass> Paired()
    {
        lock (_lock)
        {
            return [.. _byHash.Values.Where(pass => pass.Role != Role.Coach && Holds(pass)).OrderByDescending(pass => pass.Since)];
        }
    }

    /// <summary>Takes a pass back.</summary>
    /// <returns>Whether there was one.</returns>
    public bool TakeBack(string id)
    {
        lock (_lock)
        {
            if (_byHash.Values.FirstOrDefault(pass => pass.Id == id) is not { } pass)
            {
                return false;
            }

            _byHash.Remove(pass.Hash);
            Save();
            return true;
        }
    }

    private bool Holds(Pass pass) => _clock.GetUtcNow() < pass.Until && (pass.Role != Role.Coach || (pass.Stamp is not null && pass.Stamp == _passphrase.Stamp));

    private void Save() => _file.Write(new Kept { Passes = _byHash.Values.ToValueList() });

    private sealed record Kept
    {
        public required ValueList<Pass> Passes { get; init; }
    }
}
