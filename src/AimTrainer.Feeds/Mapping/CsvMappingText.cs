using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace AimTrainer.Feeds;

/// <summary>Writes mapping files.</summary>
public static class CsvMappingText
{
    /// <summary>The mapping as the text of a mapping file, which <see cref="CsvMappingFile"/> reads to the same mapping.</summary>
    public static string Of(CsvMapping mapping)
    {
        var buffer = new MemoryStream();
        using (var writer = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            writer.WriteStartObject();
            writer.WriteString("delimiter", mapping.Delimiter == '\t' ? CsvMappingFile.Tab : mapping.Delimiter.ToString());
            writer.WriteBoolean("decimalComma", mapping.DecimalComma);
            writer.WriteString("boardsCountFrom", NameOf(mapping.BoardsCountFrom));
            writer.WriteString("positionsFrom", NameOf(mapping.PositionsFrom));
            if (mapping.TimeFormat is { } format)
            {
                writer.WriteString("timeFormat", format);
            }

            writer.WriteStartObject("columns");
            foreach (var column in mapping.Columns)
            {
                Write(writer, column);
            }

            writer.WriteEndObject();
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.ToArray()) + "\n";
    }

    private static void Write(Utf8JsonWriter writer, MappedColumn column)
    {
        writer.WriteStartObject(column.Heading);
        writer.WriteString("is", column.Is == ShotColumn.BoardAt ? ShotColumns.BoardAt : ShotColumns.HeadingOf(column.Is, 0));
        if (column.Is == ShotColumn.BoardAt)
        {
            writer.WriteNumber("feet", column.Feet);
        }

        if (column.Unit != MappedUnit.Ours)
        {
            writer.WriteString("unit", MappedUnits.NameOf(column.Unit));
        }

        if (column.Negate)
        {
            writer.WriteBoolean("negate", true);
        }

        if (column.SpeedAt is { } place)
        {
            writer.WriteString("at", JsonNamingPolicy.CamelCase.ConvertName(place.ToString()));
        }

        writer.WriteEndObject();
    }

    private static string NameOf(LaneEdge edge) => JsonNamingPolicy.CamelCase.ConvertName(edge.ToString());
}
