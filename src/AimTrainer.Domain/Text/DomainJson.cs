using System.Text.Json;
using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>How the domain is written as JSON: strict, camel case, units as plain numbers, keys that carry the unit.</summary>
public static class DomainJson
{
    /// <summary>The options for logs and stored values.</summary>
    public static JsonSerializerOptions Options { get; } = Create();

    private static JsonSerializerOptions Create()
    {
        var options = new JsonSerializerOptions(JsonSerializerOptions.Strict)
        {
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
            RespectRequiredConstructorParameters = false,
        };
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false));
        options.Converters.Add(new NumberConverter<Board>(value => value.ExactBoards, value => Board.FromBoards((double)value)));
        options.Converters.Add(new NumberConverter<BoardOffset>(value => value.ExactBoards, value => BoardOffset.FromBoards((double)value)));
        options.Converters.Add(new NumberConverter<Feet>(value => (decimal)value.Value, value => Feet.FromFeet((double)value)));
        options.Converters.Add(new NumberConverter<Inches>(value => (decimal)value.Value, value => Inches.FromInches((double)value)));
        options.Converters.Add(new NumberConverter<Degrees>(value => (decimal)value.Value, value => Degrees.FromDegrees((double)value)));
        options.Converters.Add(new NumberConverter<MilesPerHour>(
            value => (decimal)value.Value, value => MilesPerHour.FromMilesPerHour((double)value)));
        options.Converters.Add(new NumberConverter<Rpm>(value => (decimal)value.Value, value => Rpm.FromRpm((double)value)));
        options.Converters.Add(new ValueListConverterFactory());
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }

    private sealed class NumberConverter<T>(Func<T, decimal> write, Func<decimal, T> read) : JsonConverter<T>
        where T : struct
    {
        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            try
            {
                return read(reader.GetDecimal());
            }
            catch (Exception exception) when (exception is ArgumentOutOfRangeException or FormatException or InvalidOperationException)
            {
                throw new JsonException($"not a {typeof(T).Name}", exception);
            }
        }

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteNumberValue(write(value));
    }
}
