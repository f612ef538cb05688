using System.Globalization;
using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>Reads mapping files (<c>docs/shots.md</c>, "Files of other programs").</summary>
public static class CsvMappingFile
{
    /// <summary>Longest mapping file, in bytes.</summary>
    public const int LongestFile = 1024 * 1024;

    /// <summary>Reads a file.</summary>
    /// <returns>The mapping, or all that is wrong with the file, or with reaching it.</returns>
    public static FileRead<CsvMapping> Load(string path)
    {
        try
        {
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            if (stream.Length > LongestFile)
            {
                return Failed(new(path, 0, "", $"{stream.Length} bytes", $"at most {LongestFile} bytes"));
            }

            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return Read(path, bytes);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Failed(CsvText.Failed(path, exception) with { Allowed = "the path of a mapping file that may be read" });
        }
    }

    /// <summary>Reads the bytes of a file.</summary>
    /// <param name="file">For messages.</param>
    /// <param name="utf8">The bytes, UTF-8 with or without a byte order mark.</param>
    /// <returns>The mapping, or all that is wrong with it.</returns>
    public static FileRead<CsvMapping> Read(string file, ReadOnlyMemory<byte> utf8)
    {
        var json = utf8.Span.StartsWith("\uFEFF"u8) ? utf8[3..] : utf8;
        try
        {
            var lines = JsonLines.Of(json.Span);
            using var document = JsonDocument.Parse(json);
            return new Reading(file, lines).Mapping(document.RootElement);
        }
        catch (JsonException exception)
        {
            var found = exception.Message.Split(" LineNumber:")[0].TrimEnd('.');
            return Failed(new(file, (int)(exception.LineNumber ?? 0) + 1, "", $"text that is not JSON ({found})", "a mapping file as docs/shots.md describes"));
        }
        catch (InvalidOperationException)
        {
            // The reader refuses a property name or string that is not UTF-8 only when it is read.
            return Failed(new(file, 0, "", "bytes that are not UTF-8", "a mapping file saved as UTF-8"));
        }
    }

    private static FileRead<CsvMapping> Failed(FileProblem problem) => new(null, [problem]);

    private sealed class Reading(string file, JsonLines lines)
    {
        private readonly List<FileProblem> _problems = [];

        public FileRead<CsvMapping> Mapping(JsonElement root)
        {
            foreach (var (path, line) in lines.Twice)
            {
                _problems.Add(new(file, line, path, "a key that was there before", "each key once"));
            }

            var mapping = new CsvMapping();
            if (!IsObject(root, "$"))
            {
                return new(null, _problems.ToValueList());
            }

            foreach (var property in root.EnumerateObject())
            {
                var path = JsonLines.PathOf("$", property.Name);
                mapping = property.Name switch
                {
                    "$schema" => mapping,
                    "columns" => mapping with { Columns = Columns(property.Value, path) },
                    "delimiter" => mapping with { Delimiter = Delimiter(property.Value, path) },
                    "decimalComma" => mapping with { DecimalComma = Flag(property.Value, path) },
                    "boardsCountFrom" => mapping with { BoardsCountFrom = Edge(property.Value, path) },
                    "positionsFrom" => mapping with { PositionsFrom = Edge(property.Value, path) },
                    "timeFormat" => mapping with { TimeFormat = TimeFormat(property.Value, path) },
                    _ => Unknown(mapping, path, "columns, delimiter, decimalComma, boardsCountFrom, positionsFrom, timeFormat"),
                };
            }

            if (mapping is { DecimalComma: true, Delimiter: ',' })
            {
                Add("$.decimalComma", "decimal commas, and cells divided by commas", "another \"delimiter\", such as \";\"");
            }

            return new(_problems.Count == 0 ? mapping : null, _problems.ToValueList());
        }

        private ValueList<MappedColumn> Columns(JsonElement element, string path)
        {
            var columns = new List<MappedColumn>();
            if (IsObject(element, path))
            {
                foreach (var property in element.EnumerateObject())
                {
                    if (Column(property.Name.Trim(), property.Value, JsonLines.PathOf(path, property.Name)) is { } column)
                    {
                        columns.Add(column);
                    }
                }
            }

            return columns.ToValueList();
        }

        private MappedColumn? Column(string heading, JsonElement element, string path)
        {
            if (!IsObject(element, path))
            {
                return null;
            }

            string? name = null, unit = null, at = null;
            double? feet = null;
            var negate = false;
            foreach (var property in element.EnumerateObject())
            {
                var inner = JsonLines.PathOf(path, property.Name);
                switch (property.Name)
                {
                    case "is":
                        name = Text(property.Value, inner);
                        break;
                    case "unit":
                        unit = Text(property.Value, inner);
                        break;
                    case "feet":
                        feet = Feet(property.Value, inner);
                        break;
                    case "negate":
                        negate = Flag(property.Value, inner);
                        break;
                    case "at":
                        at = Text(property.Value, inner);
                        break;
                    default:
                        Unknown(0, inner, "is, unit, feet, negate, at");
                        break;
                }
            }

            return Meaning(name, feet, path) is var (column, distance)
                ? new MappedColumn(heading, column, Unit(unit, column, path), distance, Negate(negate, column, path), SpeedAt(at, column, path))
                : null;
        }

        private (ShotColumn Column, double Feet)? Meaning(string? name, double? feet, string path)
        {
            var inner = path + ".is";
            if (name is null)
            {
                Add(inner, "nothing", $"{ShotColumns.Known}, or ignore");
                return null;
            }

            if (name == "ignore")
            {
                return (ShotColumn.Ignore, 0);
            }

            if (name.Equals(ShotColumns.BoardAt, StringComparison.OrdinalIgnoreCase))
            {
                if (feet is { } distance)
                {
                    return (ShotColumn.BoardAt, distance);
                }

                Add(inner, "boardAt without a distance", "\"feet\" beside it, 0 to 60");
                return null;
            }

            if (!ShotColumns.TryFind(name, out var column, out var inName) || inName > 60)
            {
                var nearest = ShotColumns.Nearest(name) is { } near ? $"{near}?" : $"{ShotColumns.Known}, or ignore";
                Add(inner, Quote.Of(name), nearest);
                return null;
            }

            if (feet is not null)
            {
                Add(path + ".feet", "a distance", "no \"feet\", except with \"is\": \"boardAt\"");
            }

            return (column, inName);
        }

        private MappedUnit Unit(string? unit, ShotColumn column, string path)
        {
            var allowed = MappedUnits.AllowedFor(column);
            if (unit is null || (allowed.Contains(unit) && MappedUnits.Find(unit) is not null))
            {
                return unit is null ? MappedUnit.Ours : MappedUnits.Find(unit)!.Value;
            }

            Add(path + ".unit", Quote.Of(unit), allowed.Count == 0 ? "no unit: this column is not a measure" : string.Join(", ", allowed));
            return MappedUnit.Ours;
        }

        private bool Negate(bool negate, ShotColumn column, string path)
        {
            if (negate && !ShotColumns.IsAngle(column))
            {
                Add(path + ".negate", "true", "only for angles");
            }

            return negate;
        }

        private SpeedPlace? SpeedAt(string? at, ShotColumn column, string path)
        {
            SpeedPlace? place = at switch
            {
                null => null,
                "release" => SpeedPlace.Release,
                "average" => SpeedPlace.Average,
                "pins" => SpeedPlace.Pins,
                _ => SpeedPlace.Unknown,
            };
            if (place == SpeedPlace.Unknown)
            {
                Add(path + ".at", Quote.Of(at), "release, average or pins");
            }

            if (at is not null && column != ShotColumn.SpeedMph)
            {
                Add(path + ".at", Quote.Of(at), "only with \"is\": \"speedMph\"");
            }

            return place;
        }

        private char Delimiter(JsonElement element, string path)
        {
            var text = Text(element, path);
            if (text is { Length: 1 } && (text[0] is ',' or ';' or '\t' or '|'))
            {
                return text[0];
            }

            if (text is not null)
            {
                Add(path, Quote.Of(text), "\",\", \";\", \"|\" or \"\\t\"");
            }

            return ',';
        }

        private LaneEdge Edge(JsonElement element, string path)
        {
            switch (Text(element, path))
            {
                case "hand" or null:
                    return LaneEdge.Hand;
                case "left":
                    return LaneEdge.Left;
                case "right":
                    return LaneEdge.Right;
                case var text:
                    Add(path, Quote.Of(text), "hand, left or right");
                    return LaneEdge.Hand;
            }
        }

        private string? TimeFormat(JsonElement element, string path)
        {
            var text = Text(element, path);
            if (text is null)
            {
                return null;
            }

            try
            {
                var written = DateTimeOffset.UnixEpoch.ToString(text, CultureInfo.InvariantCulture);
                if (text.Length > 1 && DateTimeOffset.TryParseExact(written, text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out _))
                {
                    return text;
                }
            }
            catch (FormatException)
            {
                // Said below.
            }

            Add(path, Quote.Of(text), "a format such as \"dd.MM.yyyy HH:mm:ss\"");
            return null;
        }

        private double? Feet(JsonElement element, string path)
        {
            if (element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out var feet) && feet is >= 0 and <= 60)
            {
                return feet;
            }

            Add(path, Quote.Of(element.GetRawText()), "a number of feet, 0 to 60");
            return element.ValueKind == JsonValueKind.Number ? 0 : null;
        }

        private bool Flag(JsonElement element, string path)
        {
            if (element.ValueKind is not (JsonValueKind.True or JsonValueKind.False))
            {
                Add(path, Quote.Of(element.GetRawText()), "true or false");
            }

            return element.ValueKind == JsonValueKind.True;
        }

        private string? Text(JsonElement element, string path)
        {
            if (element.ValueKind == JsonValueKind.String)
            {
                return element.GetString();
            }

            Add(path, Quote.Of(element.GetRawText()), "text in quotation marks");
            return null;
        }

        private bool IsObject(JsonElement element, string path)
        {
            if (element.ValueKind == JsonValueKind.Object)
            {
                return true;
            }

            Add(path, Quote.Of(element.GetRawText()), "an object: { … }");
            return false;
        }

        private T Unknown<T>(T value, string path, string known)
        {
            Add(path, "an unknown key", known);
            return value;
        }

        private void Add(string path, string found, string allowed) => _problems.Add(new(file, lines.LineOf(path), path, found, allowed));
    }
}
