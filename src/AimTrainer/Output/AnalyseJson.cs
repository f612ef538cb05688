using System.Text.Json;
using AimTrainer.Reports;

namespace AimTrainer.Output;

/// <summary>How figures of many shots are written as JSON: plain numbers of at most twelve decimals, units in the keys, null for the unknown.</summary>
internal static class AnalyseJson
{
    /// <summary>Writes a named value.</summary>
    public static void Write<T>(Utf8JsonWriter writer, string name, T value)
    {
        writer.WritePropertyName(name);
        JsonSerializer.Serialize(writer, value, FigureJson.Plain);
    }

    /// <summary>Writes a value of a list.</summary>
    public static void WriteValue<T>(Utf8JsonWriter writer, T value) => JsonSerializer.Serialize(writer, value, FigureJson.Plain);
}
