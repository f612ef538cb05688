using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>A comparison as one document: every figure with its limits, the unknown null with its reason (docs/comparison.md).</summary>
internal static class BallsJson
{
    private static readonly JsonSerializerOptions Options = new(DomainJson.Options)
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        DefaultIgnoreCondition = JsonIgnoreCondition.Never,
    };

    public static void Write(BallsReport report, Stream output)
    {
        JsonSerializer.Serialize(output, report, Options);
        output.WriteByte((byte)'\n');
    }
}
