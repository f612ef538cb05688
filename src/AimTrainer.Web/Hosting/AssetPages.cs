using System.Collections.Frozen;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Net.Http.Headers;

namespace AimTrainer.Web;

/// <summary>Serves the console's own styles and scripts from inside the assembly.</summary>
internal static class AssetPages
{
    private static readonly FrozenDictionary<string, (string Type, byte[] Bytes)> Assets = Read();

    public static void Map(IEndpointRouteBuilder app) => app.MapGet("/assets/{name}", (string name) =>
        Assets.TryGetValue(name, out var asset)
            ? Results.Bytes(asset.Bytes, asset.Type, entityTag: new EntityTagHeaderValue($"\"{Convert.ToHexStringLower(SHA256.HashData(asset.Bytes))[..16]}\""))
            : Problems.NotFound($"asset: found \"{name}\"; allowed: {string.Join(", ", Assets.Keys.Order(StringComparer.Ordinal))}")).ExcludeFromDescription().OpenTo(Door.Anyone);

    private static FrozenDictionary<string, (string Type, byte[] Bytes)> Read()
    {
        var assembly = typeof(AssetPages).Assembly;
        var assets = new Dictionary<string, (string, byte[])>(StringComparer.Ordinal);
        foreach (var name in assembly.GetManifestResourceNames().Where(name => !name.Contains('/', StringComparison.Ordinal)))
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            assets[name] = (Type(name), bytes.ToArray());
        }

        return assets.ToFrozenDictionary(StringComparer.Ordinal);
    }

    private static string Type(string name) => Path.GetExtension(name) switch
    {
        ".css" => "text/css; charset=utf-8",
        ".js" => "text/javascript; charset=utf-8",
        ".svg" => "image/svg+xml",
        ".woff2" => "font/woff2",
        _ => "application/octet-stream",
    };
}
