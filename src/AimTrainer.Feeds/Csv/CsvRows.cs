namespace AimTrainer.Feeds;

/// <summary>
/// Cuts text into rows and cells (RFC 4180) as it arrives. Line ends may be CRLF, LF or CR; an empty last line end is not needed.
/// </summary>
/// <remarks>
/// Written here, and not taken from a library, because a quote that is never closed must not swallow the rest of a file: such a
/// row is dropped line by line and reading goes on; because no row may take more than <see cref="LongestRow"/> of memory; and
/// because a file that is still being written needs to know whether its last row is complete.
/// </remarks>
/// <param name="delimiter">What stands between cells.</param>
internal sealed class CsvRows(char delimiter)
{
    /// <summary>Longest row, in characters.</summary>
    public const int LongestRow = 1024 * 1024;

    /// <summary>Most lines that one quoted cell may run over; with more, its quote is taken as never closed.</summary>
    public const int MostLinesInQuotes = 20;

    private const int Undecided = -1;
    private const int NotClosed = -2;

    private char[] _buffer = new char[32 * 1024];
    private CsvCell[] _cells = new CsvCell[32];
    private int _start;
    private int _end;
    private int _line = 1;
    private bool _skipLineFeed;
    private bool _skipping;

    /// <summary>The line on which the row, or what is wrong with it, starts; from 1.</summary>
    public int Line { get; private set; }

    /// <summary>How many cells the row has.</summary>
    public int Count { get; private set; }

    /// <summary>Whether a row has begun that runs over a line end inside quotes.</summary>
    public bool WaitsInQuotes { get; private set; }

    /// <summary>Whether what is there, read or not, holds a NUL: then it is not text.</summary>
    public bool HoldsNul => _buffer.AsSpan(0, _end).Contains('\0');

    /// <summary>Where to put more text; not empty.</summary>
    public Span<char> Free()
    {
        if (_start > 0)
        {
            _buffer.AsSpan(_start, _end - _start).CopyTo(_buffer);
            _end -= _start;
            _start = 0;
        }

        if (_buffer.Length - _end < 4 * 1024)
        {
            Array.Resize(ref _buffer, Math.Min(_buffer.Length * 2, LongestRow + (64 * 1024)));
        }

        return _buffer.AsSpan(_end);
    }

    /// <summary>Says how much was put there.</summary>
    public void Added(int count) => _end += count;

    /// <summary>The text of a cell, without its quotes. Valid until the next call of <see cref="Next"/> or <see cref="Free"/>.</summary>
    public ReadOnlySpan<char> Cell(int index)
    {
        var cell = _cells[index];
        var text = _buffer.AsSpan(cell.Start, cell.Length);
        return cell.HoldsQuotes ? text.ToString().Replace("\"\"", "\"", StringComparison.Ordinal) : text;
    }

    /// <summary>Looks for the next row.</summary>
    /// <param name="final">Whether no more text will come.</param>
    public CsvRowStatus Next(bool final)
    {
        if (_skipLineFeed && _start < _end)
        {
            _start += _buffer[_start] == '\n' ? 1 : 0;
            _skipLineFeed = false;
        }

        if (_skipping && !SkipRestOfLine())
        {
            return final ? CsvRowStatus.End : CsvRowStatus.NeedMore;
        }

        Line = _line;
        Count = 0;
        WaitsInQuotes = false;
        return _start == _end ? (final ? CsvRowStatus.End : CsvRowStatus.NeedMore) : ScanRow(final);
    }

    /// <summary>Looks for the next row, and no longer waits for a quote to close: for a file that nobody writes to any more.</summary>
    public CsvRowStatus GiveUpQuotes()
    {
        var status = Next(false);
        return status == CsvRowStatus.NeedMore && WaitsInQuotes ? Next(true) : status;
    }

    private CsvRowStatus ScanRow(bool final)
    {
        var at = _start;
        var lines = 0;
        while (true)
        {
            if (at < _end && _buffer[at] == '"')
            {
                var linesBefore = lines;
                var close = ClosingQuote(at, final, ref lines, out var holdsQuotes);
                if (close == Undecided)
                {
                    // A quote at the very end may be the closing one.
                    WaitsInQuotes = lines > 0 && _buffer[_end - 1] != '"';
                    return _end - _start >= LongestRow ? GiveUp(at, linesBefore) : CsvRowStatus.NeedMore;
                }

                var after = close + 1;
                var endsCell = close != NotClosed && (after == _end || _buffer[after] == delimiter || _buffer[after] is '\r' or '\n');
                if (!endsCell && (close == NotClosed || lines > linesBefore))
                {
                    return DropLineOf(at, linesBefore, CsvRowStatus.UnclosedQuote, final);
                }

                if (!endsCell)
                {
                    return DropLineOf(at, linesBefore, CsvRowStatus.TextAfterQuote, final);
                }

                AddCell(at + 1, close - at - 1, holdsQuotes);
                at = after;
            }
            else
            {
                var length = _buffer.AsSpan(at, _end - at).IndexOfAny(delimiter, '\r', '\n');
                length = length < 0 ? _end - at : length;
                AddCell(at, length, false);
                at += length;
            }

            if (at == _end)
            {
                if (!final)
                {
                    return _end - _start >= LongestRow ? TooLong() : CsvRowStatus.NeedMore;
                }

                _start = at;
                return CsvRowStatus.Row;
            }

            if (_buffer[at] != delimiter)
            {
                EndLineAt(at);
                _line += lines;
                return CsvRowStatus.Row;
            }

            at++;
        }
    }

    private int ClosingQuote(int open, bool final, ref int lines, out bool holdsQuotes)
    {
        holdsQuotes = false;
        var linesBefore = lines;
        var at = open + 1;
        while (true)
        {
            var step = _buffer.AsSpan(at, _end - at).IndexOfAny('"', '\r', '\n');
            if (step < 0)
            {
                return final ? NotClosed : Undecided;
            }

            at += step;
            if (_buffer[at] != '"')
            {
                lines += _buffer[at] == '\n' && _buffer[at - 1] == '\r' ? 0 : 1;
                if (lines - linesBefore > MostLinesInQuotes)
                {
                    return NotClosed;
                }
            }
            else if (at + 1 == _end)
            {
                return final ? at : Undecided;
            }
            else if (_buffer[at + 1] == '"')
            {
                holdsQuotes = true;
                at++;
            }
            else
            {
                return at;
            }

            at++;
        }
    }

    /// <summary>Drops the line on which a quote opened, and all before it in its row.</summary>
    private CsvRowStatus DropLineOf(int quote, int linesBefore, CsvRowStatus status, bool final)
    {
        var length = _buffer.AsSpan(quote, _end - quote).IndexOfAny('\r', '\n');
        if (length < 0 && !final)
        {
            return _end - _start >= LongestRow ? TooLong() : CsvRowStatus.NeedMore;
        }

        _line += linesBefore;
        Line = _line;
        if (length < 0)
        {
            _start = _end;
        }
        else
        {
            EndLineAt(quote + length);
        }

        return status;
    }

    private CsvRowStatus GiveUp(int quote, int linesBefore) =>
        _buffer.AsSpan(quote, _end - quote).IndexOfAny('\r', '\n') < 0
            ? TooLong()
            : DropLineOf(quote, linesBefore, CsvRowStatus.UnclosedQuote, false);

    private CsvRowStatus TooLong()
    {
        _skipping = true;
        return CsvRowStatus.TooLong;
    }

    private bool SkipRestOfLine()
    {
        var length = _buffer.AsSpan(_start, _end - _start).IndexOfAny('\r', '\n');
        if (length < 0)
        {
            _start = _end;
            return false;
        }

        _skipping = false;
        EndLineAt(_start + length);
        if (_skipLineFeed && _start < _end)
        {
            _start += _buffer[_start] == '\n' ? 1 : 0;
            _skipLineFeed = false;
        }

        return true;
    }

    /// <summary>Goes on after the line end at <paramref name="at"/>; of CRLF the LF may not be there yet.</summary>
    private void EndLineAt(int at)
    {
        _line++;
        _skipLineFeed = _buffer[at] == '\r';
        _start = at + 1;
    }

    private void AddCell(int start, int length, bool holdsQuotes)
    {
        if (Count == _cells.Length)
        {
            Array.Resize(ref _cells, _cells.Length * 2);
        }

        _cells[Count++] = new CsvCell(start, length, holdsQuotes);
    }
}
