using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace AimTrainer.Web;

/// <summary>Makes and hashes secrets that a machine chose: long and random, so that one plain hash keeps them.</summary>
internal static class Secrets
{
    private const int Bytes = 32;

    public static string New() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    public static string NewId() => RandomNumberGenerator.GetHexString(12, lowercase: true);

    public static string HashOf(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));
}
