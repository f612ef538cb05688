using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Feeds;

/// <summary>Makes shots of the text of a file, as the text arrives.</summary>
internal sealed class CsvShotParser
{
    private readonly string _file;
    private readonly CsvSettings _settings;
    private readonly Queue<FileProblem> _problems = [];
    private CsvRowReader? _rowReader;
    private bool _sawRow;
    private bool _over;

    public CsvShotParser(string file, CsvSettings settings)
    {
        _file = file;
        _settings = settings;
        Rows = new CsvRows(settings.Mapping.Delimiter);
    }

    /// <summary>Where the text goes.</summary>
    public CsvRows Rows { get; }

    /// <summary>Whether the headings cannot be read, so that nothing will come but what is wrong with them.</summary>
    public bool GaveUp => _over;

    /// <summary>The next thing in the text, or null when more text is needed or, after the last, nothing is left.</summary>
    /// <param name="final">Whether no more text will come.</param>
    public FeedItem? Next(bool final)
    {
        while (true)
        {
            if (_problems.TryDequeue(out var problem))
            {
                return new FeedItem.Unreadable(problem);
            }

            if (_over)
            {
                return null;
            }

            var status = Rows.Next(final);
            if (status == CsvRowStatus.NeedMore || (status == CsvRowStatus.End && !AtEnd()))
            {
                return null;
            }

            if (Take(status) is { } shot)
            {
                return shot;
            }
        }
    }

    /// <summary>Takes a quote that is still open as never closed; see <see cref="CsvRows.GiveUpQuotes"/>.</summary>
    public void GiveUpQuotes()
    {
        var status = Rows.GiveUpQuotes();
        if (!_over && status is not (CsvRowStatus.NeedMore or CsvRowStatus.End))
        {
            Take(status);
        }
    }

    private FeedItem.ShotRead? Take(CsvRowStatus status)
    {
        if (status == CsvRowStatus.End)
        {
            return null;
        }

        if (status != CsvRowStatus.Row)
        {
            _problems.Enqueue(Broken(status));
            _over = _over || _rowReader is null;
            _sawRow = true;
        }
        else if (_rowReader is null)
        {
            ReadHeader();
        }
        else if (!_rowReader.IsBlank(Rows))
        {
            _sawRow = true;
            return _rowReader.Read(Rows, _problems);
        }

        return null;
    }

    /// <summary>Whether there is something to say at the end of the file.</summary>
    private bool AtEnd()
    {
        _over = true;
        if (_rowReader is null)
        {
            _problems.Enqueue(new(_file, 0, "", "an empty file", "a line of headings, then one line a shot"));
        }
        else if (!_sawRow)
        {
            _problems.Enqueue(new(_file, 0, "", "headings and no shots", "one line a shot after the headings"));
        }

        return _problems.Count > 0;
    }

    private void ReadHeader()
    {
        if (Rows.Count == 1 && Rows.Cell(0).IsWhiteSpace())
        {
            return;
        }

        var found = new List<FileProblem>();
        var columns = CsvHeader.Read(Rows, _file, _settings, found);
        if (columns is null && Rows.HoldsNul)
        {
            found = [NotText()];
        }

        found.ForEach(_problems.Enqueue);
        _over = columns is null;
        _rowReader = columns is null ? null : new CsvRowReader(_file, columns, _settings);
    }

    private FileProblem Broken(CsvRowStatus status)
    {
        if (_rowReader is null && Rows.HoldsNul)
        {
            return NotText();
        }

        return status switch
        {
            CsvRowStatus.UnclosedQuote => new(
                _file, Rows.Line, "", "a quotation mark that is never closed; this line was left out", "text in a pair of quotation marks, at most "
                + string.Create(CultureInfo.InvariantCulture, $"{CsvRows.MostLinesInQuotes} lines of it; a quotation mark within doubled (\"\")")),
            CsvRowStatus.TextAfterQuote => new(
                _file, Rows.Line, "", "text after a closing quotation mark; this line was left out",
                "a quotation mark within quoted text doubled (\"\")"),
            _ => new(
                _file, Rows.Line, "", string.Create(CultureInfo.InvariantCulture, $"a line of more than {CsvRows.LongestRow} characters; it was left out"),
                "one line a shot"),
        };
    }

    private FileProblem NotText() => new(
        _file, 0, "", "bytes that are not text (or UTF-16 without a byte order mark)", "a text file in UTF-8, or in UTF-16 with a byte order mark");
}
