using System.Text.Encodings.Web;
using System.Text.Json;

namespace AimTrainer.Output;

/// <summary>How the program writes JSON for machines.</summary>
internal static class Json
{
    /// <summary>For documents: indented, readable letters.</summary>
    public static JsonWriterOptions Indented { get; } = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>For documents of any length: no blanks. Not checked while it is written, which would cost as much again as writing it.</summary>
    public static JsonWriterOptions Long { get; } = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, SkipValidation = true };

    /// <summary>For lines of a stream.</summary>
    public static JsonSerializerOptions Lines { get; } = new(Domain.DomainJson.Options) { WriteIndented = false };

    /// <summary>For documents built from objects.</summary>
    public static JsonSerializerOptions Document { get; } = new(Domain.DomainJson.Options)
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        DefaultIgnoreCondition = System.Text.Json.Serialization.JsonIgnoreCondition.Never,
    };

    /// <summary>A value of an enumeration as JSON spells it.</summary>
    public static string Word<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());

    /// <summary>Prints a document on standard output.</summary>
    public static void Print<T>(UserConsole console, T document) => console.Out.WriteLine(JsonSerializer.Serialize(document, Document));
}
