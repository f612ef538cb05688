using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>A mapping proposed from a file's headings: a start for a person to check, never taken without being looked at.</summary>
/// <param name="Mapping">What was recognised; every other heading is set to be ignored.</param>
/// <param name="Unrecognised">Headings of which nobody could tell what they are.</param>
/// <param name="Questions">What was taken without being sure, for a person to confirm.</param>
public sealed record CsvMappingProposal(CsvMapping Mapping, ValueList<string> Unrecognised, ValueList<string> Questions)
{
    private const int MostSampleRows = 20;

    /// <summary>The text of a mapping file, ready to be saved.</summary>
    public string Json => CsvMappingText.Of(Mapping);

    /// <summary>Proposes a mapping for the text of a file: finds the delimiter, then looks at the headings and the first rows.</summary>
    /// <returns>The proposal, or what is wrong with the file.</returns>
    public static FileRead<CsvMappingProposal> ForFile(TextReader text, string fileName)
    {
        var delimiter = ',';
        var buffer = new char[64 * 1024];
        var count = 0;
        try
        {
            count = text.ReadBlock(buffer);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return new(null, [CsvText.Failed(fileName, exception)]);
        }

        var start = buffer.AsSpan(0, count);
        if (start.Contains('\0') || start.IsWhiteSpace())
        {
            return new(null, [new(fileName, 0, "", start.Contains('\0') ? "bytes that are not text" : "an empty file", "a text file with a line of headings")]);
        }

        var trimmed = start.TrimStart();
        var firstLine = trimmed[..(trimmed.IndexOfAny('\r', '\n') is >= 0 and var end ? end : trimmed.Length)];
        foreach (var candidate in ";\t|")
        {
            delimiter = CountOutsideQuotes(firstLine, candidate) > CountOutsideQuotes(firstLine, delimiter) ? candidate : delimiter;
        }

        var rows = Rows(start, delimiter);
        return rows.Count == 0
            ? new(null, [new(fileName, 1, "", "a first line that cannot be cut into cells", "a line of headings")])
            : new(For(rows[0], rows.Skip(1).ToList(), delimiter), []);
    }

    /// <summary>Proposes a mapping.</summary>
    /// <param name="headings">The file's headings.</param>
    /// <param name="sampleRows">Some of its rows, to tell decimal commas and units; or none.</param>
    /// <param name="delimiter">What stands between its cells.</param>
    public static CsvMappingProposal For(
        IReadOnlyList<string> headings, IReadOnlyList<IReadOnlyList<string>>? sampleRows = null, char delimiter = ',')
    {
        var samples = sampleRows ?? [];
        var columns = new List<MappedColumn>();
        var unrecognised = new List<string>();
        var questions = new List<string>();
        var decimalComma = delimiter != ',' && samples.Any(row => row.Any(IsDecimalComma)) && !samples.Any(row => row.Any(IsDecimalPoint));
        for (var i = 0; i < headings.Count; i++)
        {
            var heading = headings[i].Trim();
            if (heading.Length == 0 || columns.Exists(column => column.Heading.Equals(heading, StringComparison.OrdinalIgnoreCase)))
            {
                questions.Add($"column {(i + 1).ToString(CultureInfo.InvariantCulture)}: it has no heading of its own and is not read");
                continue;
            }

            var guess = HeadingGuess.Of(heading);
            if (guess is not null && columns.Exists(column => column.Is == guess.Is && column.Feet == guess.Feet))
            {
                questions.Add($"{heading}: another heading is taken for the same, so this one is not read");
                guess = null;
            }

            if (guess is null)
            {
                unrecognised.Add(heading);
                columns.Add(new MappedColumn(heading, ShotColumn.Ignore));
                continue;
            }

            columns.Add(guess);
            Ask(guess, Values(samples, i, decimalComma), questions);
            if (guess.Is == ShotColumn.Time && OtherTime(samples, i) is { } written)
            {
                questions.Add($"{heading}: {FoundText.Quoted(written)} is not written as ISO 8601 does; add \"timeFormat\", such as \"dd.MM.yyyy HH:mm:ss\"");
            }
        }

        var lengths = columns.Exists(column => ShotColumns.IsPlace(column.Is) && column.Unit is not (MappedUnit.Board or MappedUnit.Ours));
        if (columns.Exists(column => ShotColumns.IsPlace(column.Is)))
        {
            questions.Add(lengths
                ? "positionsFrom: lengths are taken as measured from the bowler's ball-hand edge; say left or right if it is otherwise"
                : "boardsCountFrom: boards are taken as counted from the bowler's ball-hand edge; say left or right if it is otherwise");
        }

        var mapping = new CsvMapping { Columns = columns.ToValueList(), Delimiter = delimiter, DecimalComma = decimalComma };
        return new(mapping, unrecognised.ToValueList(), questions.ToValueList());
    }

    private static void Ask(MappedColumn guess, List<double> values, List<string> questions)
    {
        if (guess.Is == ShotColumn.SpeedMph)
        {
            if (guess.Unit == MappedUnit.Ours)
            {
                questions.Add($"{guess.Heading}: no unit; mph is taken" + (values.Exists(value => value > 24) ? ", but the numbers look like km/h" : ""));
            }

            if (guess.SpeedAt is null)
            {
                questions.Add($"{guess.Heading}: where is it measured? Add \"at\": \"release\", \"average\" or \"pins\"");
            }
        }
        else if (ShotColumns.IsPlace(guess.Is) && guess.Unit == MappedUnit.Ours
            && values.Exists(value => value is < ShotReading.LowestBoard or > ShotReading.HighestBoard))
        {
            questions.Add($"{guess.Heading}: no unit; boards are taken, but some numbers are no boards (cm, in?)");
        }
        else if (guess.Is is ShotColumn.LaunchAngleDeg)
        {
            questions.Add($"{guess.Heading}: positive is taken as outward, toward the bowler's own gutter; add \"negate\": true if it is inward");
        }
        else if (guess.Is is ShotColumn.Id)
        {
            questions.Add($"{guess.Heading}: the same id twice is one shot; if the numbers begin anew each session, make it \"ignore\"");
        }
    }

    /// <summary>The first time that is not read without a format; null when there is none.</summary>
    private static string? OtherTime(IReadOnlyList<IReadOnlyList<string>> rows, int column)
    {
        foreach (var row in rows)
        {
            var cell = column < row.Count ? row[column].Trim() : "";
            if (cell.Length > 0 && !IsoTime.TryParse(cell, out _))
            {
                return cell;
            }
        }

        return null;
    }

    private static List<double> Values(IReadOnlyList<IReadOnlyList<string>> rows, int column, bool decimalComma)
    {
        var values = new List<double>();
        foreach (var row in rows)
        {
            var cell = column < row.Count ? row[column].Trim() : "";
            cell = decimalComma ? cell.Replace(',', '.') : cell;
            if (double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var value))
            {
                values.Add(value);
            }
        }

        return values;
    }

    private static bool IsDecimalComma(string cell) => IsDecimal(cell, ',');

    private static bool IsDecimalPoint(string cell) => IsDecimal(cell, '.');

    private static bool IsDecimal(string cell, char sign)
    {
        var text = cell.AsSpan().Trim().TrimStart('-');
        var at = text.IndexOf(sign);
        return at > 0 && at < text.Length - 1 && !text[..at].ContainsAnyExceptInRange('0', '9') && !text[(at + 1)..].ContainsAnyExceptInRange('0', '9');
    }

    private static int CountOutsideQuotes(ReadOnlySpan<char> line, char wanted)
    {
        var count = 0;
        var quoted = false;
        foreach (var character in line)
        {
            quoted ^= character == '"';
            count += !quoted && character == wanted ? 1 : 0;
        }

        return count;
    }

    private static List<List<string>> Rows(ReadOnlySpan<char> text, char delimiter)
    {
        var reader = new CsvRows(delimiter);
        var found = new List<List<string>>();
        while (text.Length > 0)
        {
            var free = reader.Free();
            var count = Math.Min(free.Length, text.Length);
            text[..count].CopyTo(free);
            reader.Added(count);
            text = text[count..];
        }

        while (found.Count <= MostSampleRows && reader.Next(true) is not CsvRowStatus.End and var status)
        {
            if (status == CsvRowStatus.Row && !(reader.Count == 1 && reader.Cell(0).IsWhiteSpace()))
            {
                found.Add(Enumerable.Range(0, reader.Count).Select(i => reader.Cell(i).ToString()).ToList());
            }
        }

        return found;
    }
}
