using System.Globalization;
using System.Text;
using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Output;

/// <summary>A series from a CSV file with the columns session and value: one row a session, in any order, other columns are left aside.</summary>
/// <param name="Points">The sessions that have a value, in order.</param>
/// <param name="Missing">Sessions whose value is empty.</param>
internal sealed record TrendSeriesFile(ValueList<TrendPoint> Points, ValueList<double> Missing)
{
    private const string SessionColumn = "session";
    private const string ValueColumn = "value";
    private const int MostBytes = 1 << 20;
    private const int MostProblems = 20;

    /// <summary>Reads a file, or tells what is wrong with it.</summary>
    /// <param name="name">The file as the user named it.</param>
    /// <param name="bytes">The whole file.</param>
    /// <param name="scale">Whether every value must be above 0.</param>
    public static FileRead<TrendSeriesFile> Read(string name, byte[] bytes, TrendScale scale)
    {
        if (Utf8File.Refusal(bytes, MostBytes) is { } refusal)
        {
            var allowed = refusal.Found == "an empty file" ? Headings : refusal.Allowed;
            return new(null, [new FileProblem(name, 0, "", refusal.Found, allowed)]);
        }

        var lines = Encoding.UTF8.GetString(Utf8File.WithoutMark(bytes)).ReplaceLineEndings("\n").Split('\n');
        var first = Array.FindIndex(lines, line => !string.IsNullOrWhiteSpace(line));
        var headings = Cells(lines[first]);
        var (session, value) = (ColumnOf(headings, SessionColumn), ColumnOf(headings, ValueColumn));
        if (session < 0 || value < 0)
        {
            return new(null, [new FileProblem(name, first + 1, "", $"the headings {FoundText.Quoted(lines[first].Trim())}", Headings)]);
        }

        var reader = new Rows(name, session, value, scale);
        for (var i = first + 1; i < lines.Length && reader.Problems.Count < MostProblems; i++)
        {
            if (!string.IsNullOrWhiteSpace(lines[i]))
            {
                reader.Add(i + 1, Cells(lines[i]));
            }
        }

        return reader.Problems.Count > 0 ? new(null, reader.Problems.ToValueList()) : new(reader.Result(), []);
    }

    private static string Headings => $"the headings {SessionColumn},{ValueColumn} and below them a row for each session, such as 1,2.35";

    private static string[] Cells(string line) => [.. line.Split(',').Select(cell => cell.Trim().Trim('"').Trim())];

    private static int ColumnOf(string[] headings, string name) => Array.FindIndex(headings, heading => heading.Equals(name, StringComparison.OrdinalIgnoreCase));

    private sealed class Rows(string name, int sessionColumn, int valueColumn, TrendScale scale)
    {
        private readonly SortedDictionary<double, (int Line, double? Value)> _rows = [];

        public List<FileProblem> Problems { get; } = [];

        public void Add(int line, string[] cells)
        {
            if (Number(line, SessionColumn, cells, sessionColumn) is not { } session)
            {
                return;
            }

            if (_rows.TryGetValue(session, out var before))
            {
                Report(line, SessionColumn, $"{Text(session)} again", $"each session once; it is also in line {before.Line}");
                return;
            }

            double? value = null;
            if (valueColumn < cells.Length && cells[valueColumn].Length > 0)
            {
                value = Number(line, ValueColumn, cells, valueColumn);
                if (value is <= 0 && scale == TrendScale.Logarithm)
                {
                    Report(line, ValueColumn, cells[valueColumn], "more than 0, since a spread is judged by its logarithm; for anything else give --kind other");
                }
            }

            _rows.Add(session, (line, value));
            if (_rows.Count > TheilSen.MostPoints)
            {
                Report(line, SessionColumn, $"session number {_rows.Count}", $"at most {TheilSen.MostPoints} sessions");
            }
        }

        public TrendSeriesFile Result() => new(
            _rows.Where(row => row.Value.Value is not null).Select(row => new TrendPoint(row.Key, row.Value.Value!.Value)).ToValueList(),
            _rows.Where(row => row.Value.Value is null).Select(row => row.Key).ToValueList());

        private double? Number(int line, string column, string[] cells, int index)
        {
            var text = index < cells.Length ? cells[index] : "";
            if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && Math.Abs(number) <= Largest)
            {
                return number;
            }

            Report(line, column, text.Length == 0 ? "nothing" : FoundText.Quoted(text), "a number with a decimal point, up to 1e9 to either side");
            return null;
        }

        // Far beyond any measure of ours, and small enough that no square of it is lost.
        private const double Largest = 1e9;

        private void Report(int line, string column, string found, string allowed) => Problems.Add(new FileProblem(name, line, column, found, allowed));

        private static string Text(double number) => number.ToString(CultureInfo.InvariantCulture);
    }
}
