using System.Text.Json;

namespace AimTrainer.Tests;

/// <summary>What came of a command.</summary>
internal sealed record Ran(int Code, string Out, string Error)
{
    /// <summary>The output as one JSON document; fails when it is anything else.</summary>
    public JsonElement Json() => JsonDocument.Parse(Out).RootElement;

    /// <summary>The output as JSON, an object a line.</summary>
    public IReadOnlyList<JsonElement> JsonLines() =>
        [.. Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonDocument.Parse(line).RootElement)];
}
