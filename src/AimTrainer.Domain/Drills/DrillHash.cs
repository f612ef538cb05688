using System.Security.Cryptography;

namespace AimTrainer.Domain;

/// <summary>The fingerprint of a drill file: a record names the drill by it, so that a changed file is another drill.</summary>
public static class DrillHash
{
    /// <summary>SHA-256 of the bytes exactly as they were used, in lower-case hexadecimal (64 characters).</summary>
    public static string Of(ReadOnlySpan<byte> utf8) => Convert.ToHexStringLower(SHA256.HashData(utf8));
}
