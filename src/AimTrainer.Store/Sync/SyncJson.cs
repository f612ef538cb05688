using System.Text.Encodings.Web;
using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>How messages between a center and a chain are written. Logs travel as text inside them, byte for byte as they are kept.</summary>
public static class SyncJson
{
    /// <summary>The options.</summary>
    public static JsonSerializerOptions Options { get; } = new(DomainJson.Options) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
}
