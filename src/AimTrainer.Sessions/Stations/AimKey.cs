using System.Security.Cryptography;
using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>
/// A short name for an aim as it was drawn: its targets, where they lie and how wide they are. Who logs a shot later than it was thrown
/// says by it which aim was on the lane, so that the shot is graded against that one or not at all.
/// </summary>
public static class AimKey
{
    private const int Letters = 16;

    /// <summary>The key of an aim; two that are drawn alike have the same.</summary>
    public static string Of(Aim aim) => Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(aim, DomainJson.Options)))[..Letters];
}
