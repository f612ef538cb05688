using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace AimTrainer.Web;

/// <summary>The coach's passphrase: its hash lies in the data folder, readable by its owner alone. The file is looked at again whenever it changed.</summary>
public sealed class Passphrase
{
    /// <summary>Fewest and most characters.</summary>
    public const int Shortest = 10, Longest = 200;

    private const string FileName = "passphrase.json";
    private const int Format = 1;

    // Source: OWASP, "Password Storage Cheat Sheet": PBKDF2 with HMAC-SHA512 at least 210 000 times; the framework's own default is 100 000.
    private const int Iterations = 210_000;

    private readonly PasswordHasher<string> _hasher = new(Options.Create(new PasswordHasherOptions { IterationCount = Iterations }));
    private readonly SecretFile _file;
    private readonly Lock _lock = new();
    private (DateTime WrittenAt, string? Hash) _known = (DateTime.MinValue, null);

    /// <summary>The passphrase of a data folder.</summary>
    public Passphrase(string dataFolder) => _file = new SecretFile(Path.Combine(dataFolder, FileName));

    /// <summary>Whether one is set.</summary>
    public bool IsSet => Hash() is not null;

    /// <summary>Another value for each passphrase that is set, and null for none: passes of an earlier one no longer hold.</summary>
    internal string? Stamp => Hash() is { } hash ? Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(hash)))[..16] : null;

    /// <summary>What is wrong with a passphrase, or null.</summary>
    public static string? Problem(string passphrase) =>
        passphrase.Length is < Shortest or > Longest ? $"passphrase: found {passphrase.Length} characters; allowed: {Shortest} to {Longest}, a few words are easiest to remember"
        : passphrase.Any(char.IsControl) ? "passphrase: found control characters; allowed: letters, digits, signs and spaces"
        : null;

    /// <summary>Sets it.</summary>
    /// <exception cref="ArgumentException">It is too short, too long, or holds control characters.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public void Set(string passphrase)
    {
        if (Problem(passphrase) is { } problem)
        {
            throw new ArgumentException(problem, nameof(passphrase));
        }

        var hash = _hasher.HashPassword("", passphrase);
        _file.Write(new Kept { Format = Format, Hash = hash });
        lock (_lock)
        {
            _known = (_file.WrittenAt, hash);
        }
    }

    /// <summary>Takes it away.</summary>
    /// <returns>Whether there was one.</returns>
    public bool Remove() => _file.Delete();

    /// <summary>Whether this is it.</summary>
    public bool Matches(string passphrase) =>
        Hash() is { } hash && passphrase.Length <= Longest && _hasher.VerifyHashedPassword("", hash, passphrase) != PasswordVerificationResult.Failed;

    private string? Hash()
    {
        var writtenAt = _file.WrittenAt;
        lock (_lock)
        {
            if (writtenAt != _known.WrittenAt)
            {
                _known = (writtenAt, _file.Read<Kept>()?.Hash);
            }

            return _known.Hash;
        }
    }

    private sealed record Kept
    {
        public required int Format { get; init; }

        public required string Hash { get; init; }
    }
}
