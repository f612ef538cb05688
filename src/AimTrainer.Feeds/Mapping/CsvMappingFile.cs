using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>Reads mapping files (<c>docs/shots.md</c>, "Files of other programs").</summary>
public static class CsvMappingFile
{
    /// <summary>How <c>delimiter</c> writes a tab: it would not be seen.</summary>
    internal const string Tab = "tab";

    private const int LongestText = 200;

    private static readonly string[] Units = ["board", "cm", "m", "in", "mm", "ft", "mph", "km/h", "m/s", "deg", "rad", "rpm"];

    /// <summary>Reads the bytes of a file.</summary>
    /// <param name="file">The file as the user named it, for messages.</param>
    /// <param name="utf8">The whole file, UTF-8 with or without a byte order mark.</param>
    /// <returns>The mapping, or all that is wrong with it.</returns>
    public static FileRead<CsvMapping> Read(string file, ReadOnlySpan<byte> utf8)
    {
        var json = JsonFile.Read(file, utf8);
        var mapping = json.Root is { } root && ObjectReader.Of(json, root) is { } reader ? Mapping(json, reader) : null;
        return new(json.HasProblems ? null : mapping, json.Problems);
    }

    private static CsvMapping Mapping(JsonFile json, ObjectReader reader)
    {
        reader.OptionalText("$schema", 500);
        var delimiter = reader.OptionalWord("delimiter", ",", ";", "|", Tab) ?? ",";
        var mapping = new CsvMapping
        {
            Delimiter = delimiter == Tab ? '\t' : delimiter[0],
            DecimalComma = reader.OptionalFlag("decimalComma") ?? false,
            BoardsCountFrom = reader.OptionalChoice<LaneEdge>("boardsCountFrom") ?? LaneEdge.Hand,
            PositionsFrom = reader.OptionalChoice<LaneEdge>("positionsFrom") ?? LaneEdge.Hand,
            TimeFormat = TimeFormat(reader),
            Columns = reader.OptionalObject("columns") is { } columns ? Columns(json, columns) : [],
        };
        if (mapping is { DecimalComma: true, Delimiter: ',' })
        {
            reader.Report("decimalComma", "decimal commas, and cells divided by commas", "another \"delimiter\", such as \";\"");
        }

        reader.Done();
        return mapping;
    }

    private static ValueList<MappedColumn> Columns(JsonFile json, ObjectReader columns)
    {
        var found = new List<MappedColumn>();
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var member in columns.Node.Members)
        {
            var heading = member.Name.Trim();
            if (!taken.Add(heading) && columns.Node.Members.Count(other => other.Name == member.Name) == 1)
            {
                json.Report(member.Place, $"{FoundText.Quoted(heading)} a second time", "each heading once; capital letters make no difference");
            }
            else if (ObjectReader.Of(json, member.Value) is { } reader && Column(heading, reader) is { } column)
            {
                found.Add(column);
            }
        }

        return found.ToValueList();
    }

    private static MappedColumn? Column(string heading, ObjectReader reader)
    {
        var name = reader.Text("is", LongestText);
        var unit = reader.OptionalWord("unit", Units);
        var feet = reader.OptionalNumber("feet", 0, LaneProfile.HeadPin.Value);
        var negate = reader.OptionalFlag("negate") ?? false;
        var at = reader.OptionalChoice("at", SpeedPlace.Unknown);
        reader.Done();
        if (name is null || Meaning(name, feet, reader) is not var (column, distance))
        {
            return null;
        }

        var allowed = MappedUnits.AllowedFor(column);
        if (unit is not null && !allowed.Contains(unit))
        {
            reader.Report(
                "unit", $"the unit {FoundText.Quoted(unit)} for {name}", allowed.Count == 0 ? "no \"unit\": this is not a measure" : string.Join(", ", allowed));
        }

        if (negate && !ShotColumns.IsAngle(column))
        {
            reader.Report("negate", $"\"negate\" for {name}", "only for angles");
        }

        if (at is not null && column != ShotColumn.SpeedMph)
        {
            reader.Report("at", $"\"at\" for {name}", "only for speedMph");
        }

        return new MappedColumn(heading, column, unit is null ? MappedUnit.Ours : MappedUnits.Find(unit)!.Value, distance, negate, at);
    }

    private static (ShotColumn Column, double Feet)? Meaning(string name, double? feet, ObjectReader reader)
    {
        if (name.Equals(ShotColumns.BoardAt, StringComparison.OrdinalIgnoreCase))
        {
            if (feet is null && !reader.Has("feet"))
            {
                reader.Report("is", "boardAt without a distance", "\"feet\" beside it, 0 to 60");
            }

            return (ShotColumn.BoardAt, feet ?? 0);
        }

        if (reader.Has("feet"))
        {
            reader.Report("feet", $"\"feet\" for {FoundText.Short(name)}", "only with \"is\": \"boardAt\"");
        }

        if (name.Equals("ignore", StringComparison.OrdinalIgnoreCase))
        {
            return (ShotColumn.Ignore, 0);
        }

        if (ShotColumns.TryFind(name, out var column, out var distance) && distance <= LaneProfile.HeadPin.Value)
        {
            return (column, distance);
        }

        reader.Report("is", FoundText.Quoted(name), ShotColumns.Nearest(name) is { } near ? $"{near}?" : $"{ShotColumns.Known}, or ignore");
        return null;
    }

    private static string? TimeFormat(ObjectReader reader)
    {
        if (reader.OptionalText("timeFormat", LongestText) is not { } format)
        {
            return null;
        }

        try
        {
            var written = DateTimeOffset.UnixEpoch.ToString(format, CultureInfo.InvariantCulture);
            if (format.Length > 1 && DateTimeOffset.TryParseExact(written, format, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out _))
            {
                return format;
            }
        }
        catch (FormatException)
        {
            // Said below.
        }

        reader.Report("timeFormat", FoundText.Quoted(format), "a format such as \"dd.MM.yyyy HH:mm:ss\"");
        return null;
    }
}
