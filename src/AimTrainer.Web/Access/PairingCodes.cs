using System.Globalization;
using System.Security.Cryptography;

namespace AimTrainer.Web;

/// <summary>Short codes by which a bowler's phone is paired to a station, or a projector let in for one: each works once, for ten minutes. They do not outlive a restart.</summary>
internal sealed class PairingCodes(TimeProvider clock)
{
    /// <summary>How long a code works.</summary>
    public static readonly TimeSpan GoodFor = TimeSpan.FromMinutes(10);

    /// <summary>Most codes at once; one more ends the oldest.</summary>
    private const int Most = 64;

    /// <summary>After so many wrong codes all that are out end: whoever guesses must not get through them.</summary>
    private const int MostWrong = 50;

    private readonly Lock _lock = new();
    private readonly Dictionary<string, (Role Role, int Station, DateTimeOffset Until)> _codes = new(StringComparer.Ordinal);
    private int _wrong;

    /// <summary>Makes a code of six digits.</summary>
    public (string Code, DateTimeOffset Until) New(Role role, int station)
    {
        lock (_lock)
        {
            RemoveOver();
            if (_codes.Count >= Most)
            {
                _codes.Remove(_codes.MinBy(code => code.Value.Until).Key);
            }

            string code;
            do
            {
                code = RandomNumberGenerator.GetInt32(1_000_000).ToString("d6", CultureInfo.InvariantCulture);
            }
            while (_codes.ContainsKey(code));
            var until = clock.GetUtcNow() + GoodFor;
            _codes.Add(code, (role, station, until));
            _wrong = 0;
            return (code, until);
        }
    }

    /// <summary>Uses a code up.</summary>
    /// <returns>Its station; null when there is no such code for this role, or no longer.</returns>
    public int? Use(Role role, string code)
    {
        lock (_lock)
        {
            RemoveOver();
            if (_codes.TryGetValue(code, out var found) && found.Role == role)
            {
                _codes.Remove(code);
                return found.Station;
            }

            if (++_wrong >= MostWrong)
            {
                _codes.Clear();
            }

            return null;
        }
    }

    private void RemoveOver()
    {
        var now = clock.GetUtcNow();
        foreach (var over in _codes.Where(code => code.Value.Until <= now).Select(code => code.Key).ToList())
        {
            _codes.Remove(over);
        }
    }
}
