using System.Text.Json;
using System.Text.Json.Serialization;
using AimTrainer.Analysis;

namespace AimTrainer.Output;

/// <summary>How figures of many shots are written as JSON: plain numbers of at most twelve decimals, units in the keys, null for the unknown.</summary>
internal static class AnalyseJson
{
    private static JsonSerializerOptions Options { get; } = Create();

    /// <summary>Writes a named value.</summary>
    public static void Write<T>(Utf8JsonWriter writer, string name, T value)
    {
        writer.WritePropertyName(name);
        JsonSerializer.Serialize(writer, value, Options);
    }

    /// <summary>Writes a shot: its number, what came of it at every target, and the sentence.</summary>
    public static void WriteShot(Utf8JsonWriter writer, int number, int? line, ObservedShot shot, StudiedShot studied, MissWords words, PlanKind kind)
    {
        writer.WriteStartObject();
        writer.WriteNumber("number"u8, number);
        if (line is { } known)
        {
            writer.WriteNumber("line"u8, known);
        }

        Write(writer, "held", shot.Held);
        Write(writer, "straightLine", studied.Split.Line);
        Write(writer, "laydownOffBoards", studied.Split.LaydownOffBoards);
        Write(writer, "angleOffDegrees", studied.Split.AngleOffDegrees);
        writer.WriteStartArray("targets"u8);
        for (var i = 0; i < shot.Targets.Count; i++)
        {
            writer.WriteStartObject();
            Write(writer, "crossing", shot.Targets[i].Kind);
            Write(writer, "crossingBoard", shot.Targets[i].Board);
            Write(writer, "held", shot.Targets[i].Held);
            Write(writer, "grossMiss", studied.Gross[i]);
            Write(writer, "split", studied.Split.Targets[i]);
            writer.WriteString("sentence"u8, words.Of(studied.Split, i, kind));
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        Write(writer, "why", studied.Split.Why);
        writer.WriteEndObject();
    }

    private static JsonSerializerOptions Create()
    {
        var options = new JsonSerializerOptions(Json.Document);
        options.Converters.Add(new PlainNumber());
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
