using System.Text.Json;
using Json.Schema;

namespace AimTrainer.Domain.Tests;

/// <summary>The shipped schema, held against drills by a validator that is not ours.</summary>
public sealed class DrillSchema
{
    private readonly JsonSchema _schema = JsonSchema.FromText(File.ReadAllText(TestFiles.Drill("drill.schema")));

    /// <summary>Everything that the schema finds wrong; empty when the drill is valid.</summary>
    public IReadOnlyList<string> Errors(ReadOnlyMemory<byte> utf8)
    {
        using var document = JsonDocument.Parse(utf8);
        var result = _schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        if (result.IsValid)
        {
            return [];
        }

        return [.. (result.Details ?? []).SelectMany(detail => detail.Errors ?? [], (detail, error) => $"{detail.InstanceLocation} {error.Value}").Prepend("invalid")];
    }
}
