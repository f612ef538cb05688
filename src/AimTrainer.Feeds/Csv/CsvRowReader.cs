using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Feeds;

/// <summary>Makes a shot of one row.</summary>
internal sealed class CsvRowReader
{
    private const NumberStyles Number =
        NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite | NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint
        | NumberStyles.AllowExponent;

    private static readonly NumberFormatInfo DecimalComma = new() { NumberDecimalSeparator = ",", NumberGroupSeparator = " " };

    private readonly string _file;
    private readonly CsvColumn[] _columns;
    private readonly CsvSettings _settings;
    private readonly NumberFormatInfo _numbers;
    private readonly int _handColumn;
    private readonly bool _needsHand;
    private readonly SpeedPlace _speedPlace;
    private string _lastBowler = "";
    private string _lastBall = "";
    private string _lastLine = "";

    public CsvRowReader(string file, CsvColumn[] columns, CsvSettings settings)
    {
        _file = file;
        _columns = columns;
        _settings = settings;
        _numbers = settings.Mapping.DecimalComma ? DecimalComma : NumberFormatInfo.InvariantInfo;
        _handColumn = Array.FindIndex(columns, column => column.Is == ShotColumn.Hand);
        _needsHand = Array.Exists(columns, column => column.From != LaneEdge.Hand);
        _speedPlace = settings.Mapping.Columns.FirstOrDefault(column => column.Is == ShotColumn.SpeedMph)?.SpeedAt ?? SpeedPlace.Unknown;
    }

    /// <summary>Whether a row holds nothing at all, as an empty line or a spreadsheet's row of empty cells.</summary>
    public bool IsBlank(CsvRows row)
    {
        for (var i = 0; i < row.Count; i++)
        {
            if (!row.Cell(i).IsWhiteSpace())
            {
                return false;
            }
        }

        return row.Count == 1 || row.Count == _columns.Length;
    }

    /// <summary>Reads a row.</summary>
    /// <returns>The shot, or null when anything is wrong with the row: then all that is wrong is in <paramref name="problems"/>.</returns>
    public FeedItem.ShotRead? Read(CsvRows row, Queue<FileProblem> problems)
    {
        if (row.Count != _columns.Length)
        {
            problems.Enqueue(new(
                _file, row.Line, "", string.Create(CultureInfo.InvariantCulture, $"{row.Count} cells"),
                string.Create(CultureInfo.InvariantCulture, $"{_columns.Length} cells, one for each heading")));
            return null;
        }

        var before = problems.Count;
        var hand = _handColumn < 0 ? null : HandOf(row, problems);
        var edgeHand = hand ?? _settings.Hand;
        if (_needsHand && edgeHand is null && problems.Count == before)
        {
            problems.Enqueue(new(
                _file, row.Line, "hand", "no hand, though boards count from an edge", "right or left, in a column or given with the file"));
            return null;
        }

        var reading = new ShotReading { Source = ShotSource.File, SpeedPlace = _speedPlace };
        string? bowler = null;
        string? lineName = null;
        for (var i = 0; i < _columns.Length; i++)
        {
            var cell = row.Cell(i);
            if (!cell.IsEmpty && !cell.IsWhiteSpace())
            {
                ReadCell(_columns[i], cell, edgeHand ?? Hand.Right, reading, ref bowler, ref lineName, row.Line, problems);
            }
        }

        if (reading.BreakpointBoard is null && problems.Count > before)
        {
            // The board may be what could not be read: its distance is then not the mistake.
            reading.BreakpointFeet = null;
        }

        var shot = reading.Check(out var wrong);
        foreach (var problem in wrong)
        {
            problems.Enqueue(Shown(problem, row));
        }

        return shot is not null && problems.Count == before ? new FeedItem.ShotRead(shot, bowler, hand, row.Line) { LineName = lineName } : null;
    }

    private Hand? HandOf(CsvRows row, Queue<FileProblem> problems)
    {
        var cell = row.Cell(_handColumn).Trim();
        if (cell.Equals("right", StringComparison.OrdinalIgnoreCase))
        {
            return Hand.Right;
        }

        if (cell.Equals("left", StringComparison.OrdinalIgnoreCase))
        {
            return Hand.Left;
        }

        if (!cell.IsEmpty)
        {
            problems.Enqueue(new(_file, row.Line, _columns[_handColumn].Heading, FoundText.Quoted(cell.ToString()), "right, left, or nothing"));
        }

        return null;
    }

    private void ReadCell(
        CsvColumn column, ReadOnlySpan<char> cell, Hand hand, ShotReading reading, ref string? bowler, ref string? lineName, int line, Queue<FileProblem> problems)
    {
        switch (column.Is)
        {
            case ShotColumn.Ignore or ShotColumn.Hand:
                break;
            case ShotColumn.Id:
                reading.Id = Text(column, cell, "", line, problems);
                break;
            case ShotColumn.Bowler:
                bowler = Text(column, cell, _lastBowler, line, problems);
                _lastBowler = bowler ?? _lastBowler;
                break;
            case ShotColumn.Ball:
                reading.Ball = Text(column, cell, _lastBall, line, problems);
                _lastBall = reading.Ball ?? _lastBall;
                break;
            case ShotColumn.Line:
                lineName = Text(column, cell, _lastLine, line, problems);
                _lastLine = lineName ?? _lastLine;
                break;
            case ShotColumn.Note:
                reading.Note = Text(column, cell, "", line, problems);
                break;
            case ShotColumn.Time:
                reading.Time = Time(column, cell, line, problems);
                break;
            case ShotColumn.SpeedAt:
                reading.SpeedPlace = Place(column, cell, line, problems);
                break;
            case ShotColumn.Pins:
                reading.Pins = WholeNumber(column, cell, line, problems);
                break;
            default:
                if (Measure(column, cell, hand, line, problems) is { } value)
                {
                    Put(column, value, reading);
                }

                break;
        }
    }

    private static void Put(CsvColumn column, double value, ShotReading reading)
    {
        switch (column.Is)
        {
            case ShotColumn.LaydownBoard:
                reading.LaydownBoard = value;
                break;
            case ShotColumn.BreakpointBoard:
                reading.BreakpointBoard = value;
                break;
            case ShotColumn.BreakpointFeet:
                reading.BreakpointFeet = value;
                break;
            case ShotColumn.EntryBoard:
                reading.EntryBoard = value;
                break;
            case ShotColumn.SpeedMph:
                reading.SpeedMilesPerHour = value;
                break;
            case ShotColumn.RevsRpm:
                reading.RevsRpm = value;
                break;
            case ShotColumn.AxisRotationDeg:
                reading.AxisRotationDegrees = value;
                break;
            case ShotColumn.AxisTiltDeg:
                reading.AxisTiltDegrees = value;
                break;
            case ShotColumn.LaunchAngleDeg:
                reading.LaunchAngleDegrees = value;
                break;
            case ShotColumn.EntryAngleDeg:
                reading.EntryAngleDegrees = value;
                break;
            default:
                reading.AddCrossing(column.Feet, value);
                break;
        }
    }

    /// <summary>.NET takes NULs after a number for blanks; a file cut off by a crash ends in them, and its last number may be half of one.</summary>
    private static bool IsTornOff(ReadOnlySpan<char> cell) => cell.Length > 0 && cell[^1] == '\0';

    private double? Measure(CsvColumn column, ReadOnlySpan<char> cell, Hand hand, int line, Queue<FileProblem> problems)
    {
        if (IsTornOff(cell) || !double.TryParse(cell, Number, _numbers, out var value) || !double.IsFinite(value))
        {
            problems.Enqueue(new(_file, line, column.Heading, FoundText.Quoted(cell.ToString()), NumberAllowed(cell)));
            return null;
        }

        if (!column.Converted)
        {
            return value;
        }

        value *= column.Factor;
        var boards = column.IsLength ? (value * LaneProfile.BoardCount / _settings.Lane.Width.Value) + 0.5 : value;
        var ownEdge = hand == Hand.Right ? LaneEdge.Right : LaneEdge.Left;
        return column.From == LaneEdge.Hand || column.From == ownEdge ? boards : LaneProfile.BoardCount + 1 - boards;
    }

    private string NumberAllowed(ReadOnlySpan<char> cell)
    {
        var wanted = _settings.Mapping.DecimalComma ? "a number such as 10,5" : "a number such as 10.5";
        if (!_settings.Mapping.DecimalComma && cell.Contains(',') && double.TryParse(cell, Number, DecimalComma, out _))
        {
            return wanted + " (for decimal commas use a mapping file with \"decimalComma\": true)";
        }

        return _settings.Mapping.DecimalComma && cell.Contains('.') && double.TryParse(cell, Number, NumberFormatInfo.InvariantInfo, out _)
            ? wanted + " (the mapping file says \"decimalComma\": true)"
            : wanted + ", or nothing when it was not measured";
    }

    private int? WholeNumber(CsvColumn column, ReadOnlySpan<char> cell, int line, Queue<FileProblem> problems)
    {
        if (!IsTornOff(cell) && int.TryParse(cell, NumberStyles.Integer, CultureInfo.InvariantCulture, out var value))
        {
            return value;
        }

        problems.Enqueue(new(_file, line, column.Heading, FoundText.Quoted(cell.ToString()), "a whole number from 0 to 10"));
        return null;
    }

    private DateTimeOffset? Time(CsvColumn column, ReadOnlySpan<char> cell, int line, Queue<FileProblem> problems)
    {
        var format = _settings.Mapping.TimeFormat;
        if (format is null ? IsoTime.TryParse(cell, out var time) : DateTimeOffset.TryParseExact(
                cell.Trim(), format, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out time))
        {
            return time;
        }

        problems.Enqueue(new(
            _file, line, column.Heading, FoundText.Quoted(cell.ToString()),
            format is null ? "a date and time such as 2026-03-01T18:05:09 or 2026-03-01T18:05:09+01:00" : $"a time as {format}"));
        return null;
    }

    private SpeedPlace Place(CsvColumn column, ReadOnlySpan<char> cell, int line, Queue<FileProblem> problems)
    {
        var word = cell.Trim();
        foreach (var place in (ReadOnlySpan<SpeedPlace>)[SpeedPlace.Release, SpeedPlace.Average, SpeedPlace.Pins, SpeedPlace.Unknown])
        {
            if (word.Equals(NameOf(place), StringComparison.OrdinalIgnoreCase))
            {
                return place;
            }
        }

        problems.Enqueue(new(_file, line, column.Heading, FoundText.Quoted(cell.ToString()), "release, average, pins or unknown"));
        return SpeedPlace.Unknown;
    }

    private static string NameOf(SpeedPlace place) => place switch
    {
        SpeedPlace.Release => "release",
        SpeedPlace.Average => "average",
        SpeedPlace.Pins => "pins",
        _ => "unknown",
    };

    private string? Text(CsvColumn column, ReadOnlySpan<char> cell, string last, int line, Queue<FileProblem> problems)
    {
        var text = cell.Trim();
        if (text.SequenceEqual(last))
        {
            return last;
        }

        if (text.Contains('\uFFFD'))
        {
            problems.Enqueue(new(_file, line, column.Heading, FoundText.Quoted(text.ToString()) + " with bytes that are not UTF-8", "the file saved as UTF-8"));
            return null;
        }

        foreach (var character in text)
        {
            if (char.IsControl(character) && character is not ('\t' or '\r' or '\n'))
            {
                problems.Enqueue(new(_file, line, column.Heading, FoundText.Quoted(text.ToString()), "text without control characters"));
                return null;
            }
        }

        return FormulaGuard.Plain(text.ToString());
    }

    /// <summary>The same problem with the file's own heading, and beside a converted number the one that stands in the file.</summary>
    private FileProblem Shown(ReadingProblem problem, CsvRows row)
    {
        var index = Array.FindIndex(_columns, column => column.Field == problem.Field);
        if (index < 0)
        {
            return new(_file, row.Line, problem.Field, problem.Found, problem.Allowed);
        }

        var column = _columns[index];
        if (!column.Converted)
        {
            return new(_file, row.Line, column.Heading, problem.Found, problem.Allowed);
        }

        var ours = double.TryParse(problem.Found, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            ? value.ToString("0.##", CultureInfo.InvariantCulture) : problem.Found;
        var theirs = FoundText.Quoted(row.Cell(index).Trim().ToString());
        return new(_file, row.Line, column.Heading, $"{theirs} ({column.Name} {ours})", $"{column.Name} {problem.Allowed}");
    }
}
