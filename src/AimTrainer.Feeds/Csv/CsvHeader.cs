using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>Works out what the columns of a file are from its headings.</summary>
internal static class CsvHeader
{
    /// <summary>Reads the headings.</summary>
    /// <param name="rows">Holds the header row.</param>
    /// <param name="file">For messages.</param>
    /// <param name="settings">Lane and mapping.</param>
    /// <param name="problems">What is wrong; with columns it is only a notice.</param>
    /// <returns>The columns, or null when the file cannot be read with these headings.</returns>
    public static CsvColumn[]? Read(CsvRows rows, string file, CsvSettings settings, List<FileProblem> problems)
    {
        var columns = new CsvColumn[rows.Count];
        var taken = new HashSet<string>(StringComparer.Ordinal);
        var readable = true;
        for (var i = 0; i < columns.Length; i++)
        {
            var heading = rows.Cell(i).Trim().ToString();
            columns[i] = Column(heading, settings) ?? new CsvColumn(heading, heading, heading, ShotColumn.Ignore, 0, 1, false, LaneEdge.Hand, false);
            if (columns[i].Is == ShotColumn.Ignore)
            {
                if (Mapped(heading, settings.Mapping) is null)
                {
                    problems.Add(Unknown(heading, i, file, rows.Line));
                }
            }
            else if (!(columns[i].Feet >= 0 && columns[i].Feet <= 60))
            {
                problems.Add(new(file, rows.Line, Shown(heading), "a distance off the lane", "0 to 60 feet"));
                readable = false;
            }
            else if (!taken.Add(columns[i].Name))
            {
                problems.Add(new(file, rows.Line, Shown(heading), $"{columns[i].Name} twice", "each column once"));
                readable = false;
            }
        }

        foreach (var mapped in settings.Mapping.Columns)
        {
            if (!Array.Exists(columns, column => column.Heading.Equals(mapped.Heading, StringComparison.OrdinalIgnoreCase)))
            {
                problems.Add(new(file, rows.Line, Shown(mapped.Heading), "no such column", "the headings that the mapping file names"));
            }
        }

        if (!readable || Array.Exists(columns, column => ShotColumns.IsPlace(column.Is)))
        {
            return readable ? columns : null;
        }

        var hint = Hint(rows, settings);
        if (hint.Length > 0)
        {
            // With the wrong delimiter nothing else that was found means anything.
            problems.Clear();
        }

        problems.Add(new(file, rows.Line, "", "no column that says where the ball was", ShotColumns.KnownCrossings + hint));
        return null;
    }

    private static CsvColumn? Column(string heading, CsvSettings settings)
    {
        if (Mapped(heading, settings.Mapping) is { } mapped)
        {
            return mapped.Is == ShotColumn.Ignore ? null : Made(heading, mapped.Is, mapped.Feet, mapped.Unit, mapped.Negate, settings);
        }

        return ShotColumns.TryFind(heading, out var column, out var feet)
            ? Made(heading, column, feet, MappedUnit.Ours, false, settings)
            : null;
    }

    private static CsvColumn Made(string heading, ShotColumn column, double feet, MappedUnit unit, bool negate, CsvSettings settings)
    {
        var isPlace = ShotColumns.IsPlace(column);
        var isLength = isPlace && unit is not (MappedUnit.Ours or MappedUnit.Board);
        var from = !isPlace ? LaneEdge.Hand : isLength ? settings.Mapping.PositionsFrom : settings.Mapping.BoardsCountFrom;
        var name = ShotColumns.HeadingOf(column, feet);
        if (column == ShotColumn.ArrowsBoard)
        {
            (column, feet) = (ShotColumn.BoardAt, settings.Lane.ArrowsDistance.Value);
        }

        var factor = MappedUnits.Factor(column, unit) * (negate ? -1 : 1);
        var field = ShotColumns.HeadingOf(column, feet);
        return new CsvColumn(heading, name, field, column, feet, factor, isLength, from, factor != 1 || isLength || from != LaneEdge.Hand);
    }

    private static MappedColumn? Mapped(string heading, CsvMapping mapping)
    {
        foreach (var column in mapping.Columns)
        {
            if (column.Heading.Equals(heading, StringComparison.OrdinalIgnoreCase))
            {
                return column;
            }
        }

        return null;
    }

    private static FileProblem Unknown(string heading, int index, string file, int line)
    {
        if (heading.Length == 0)
        {
            return new(file, line, string.Create(CultureInfo.InvariantCulture, $"column {index + 1}"), "no heading, so it is not read", "a heading for each column");
        }

        var nearest = ShotColumns.Nearest(heading) is { } name ? $"{name}?" : "a heading of docs/shots.md";
        return new(file, line, Shown(heading), "an unknown column, which is not read", $"{nearest} (or say in a mapping file what it is)");
    }

    private static string Hint(CsvRows rows, CsvSettings settings)
    {
        if (rows.Count != 1 || rows.Cell(0).IndexOfAny(";\t|,") is not (>= 0 and var at))
        {
            return "";
        }

        var other = rows.Cell(0)[at];
        return other == settings.Mapping.Delimiter ? "" : $"; the cells seem to be divided by {Name(other)}: say so as \"delimiter\" in a mapping file";
    }

    private static string Name(char delimiter) => delimiter == '\t' ? "tabs" : $"\"{delimiter}\"";

    private static string Shown(string heading) => FoundText.Short(heading);
}
