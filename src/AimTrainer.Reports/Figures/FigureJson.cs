using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>How figures are written as JSON, by commands and over HTTP alike: units in the keys, null for the unknown.</summary>
public static class FigureJson
{
    /// <summary>Every digit: figures whose smallest values matter, such as probabilities.</summary>
    public static JsonSerializerOptions Exact { get; } = Create(plain: false);

    /// <summary>Plain numbers of at most twelve decimals: figures of shots, in boards and shares.</summary>
    public static JsonSerializerOptions Plain { get; } = Create(plain: true);

    private static JsonSerializerOptions Create(bool plain)
    {
        var options = new JsonSerializerOptions(DomainJson.Options)
        {
            WriteIndented = true,
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
            DefaultIgnoreCondition = JsonIgnoreCondition.Never,
        };
        if (plain)
        {
            options.Converters.Add(new PlainNumber());
        }

        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }

    // A double prints very small numbers with an exponent. Twelve decimals are far below what is measured.
    private sealed class PlainNumber : JsonConverter<double>
    {
        private const double LargestDecimal = 1e15;

        public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetDouble();

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
        {
            if (Math.Abs(value) < LargestDecimal)
            {
                writer.WriteNumberValue(decimal.Round((decimal)value, 12) / 1.000000000000000000000000000000m);
            }
            else
            {
                writer.WriteNumberValue(value);
            }
        }
    }
}
