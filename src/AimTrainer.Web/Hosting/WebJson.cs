using System.Text.Encodings.Web;
using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>How answers and events are written: the domain's JSON, with nulls, since unknown is shown as unknown.</summary>
public static class WebJson
{
    /// <summary>The options.</summary>
    public static JsonSerializerOptions Options { get; } = new(DomainJson.Options)
    {
        DefaultIgnoreCondition = System.Text.Json.Serialization.JsonIgnoreCondition.Never,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };
}
