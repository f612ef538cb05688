using System.Buffers;
using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Feeds;

/// <summary>Writes shots as CSV with our own headings (RFC 4180), so that they can be read again; no text in it is a formula to a spreadsheet.</summary>
public static class CsvShotWriter
{
    private static readonly (string Heading, Func<Shot, string?> Value)[] Columns =
    [
        ("id", shot => Guarded(shot.Id)),
        ("time", shot => shot.Time?.ToString("O", CultureInfo.InvariantCulture)),
        ("ball", shot => Guarded(shot.Ball)),
        ("laydownBoard", shot => shot.Laydown?.ToString()),
        ("breakpointBoard", shot => shot.Breakpoint?.Board.ToString()),
        ("breakpointFeet", shot => shot.Breakpoint?.Distance?.ToString()),
        ("entryBoard", shot => shot.Entry?.ToString()),
        ("speedMph", shot => shot.Speed?.Value.ToString()),
        ("speedAt", shot => shot.Speed?.Place is { } place ? place.ToString().ToLowerInvariant() : null),
        ("revsRpm", shot => shot.Revs?.ToString()),
        ("axisRotationDeg", shot => shot.AxisRotation?.ToString()),
        ("axisTiltDeg", shot => shot.AxisTilt?.ToString()),
        ("launchAngleDeg", shot => shot.LaunchAngle?.ToString()),
        ("entryAngleDeg", shot => shot.EntryAngle?.ToString()),
        ("pins", shot => shot.Pins?.ToString(CultureInfo.InvariantCulture)),
        ("note", shot => Guarded(shot.Note)),
    ];

    /// <summary>What makes a cell one between quotation marks; a semicolon too, since some spreadsheets cut there.</summary>
    private static readonly SearchValues<char> Special = SearchValues.Create(",;\t\"\r\n");

    /// <summary>Writes a heading line and a line for every shot; columns that no shot fills are left out.</summary>
    /// <param name="output">Where to; its line ending is used.</param>
    /// <param name="shots">The shots, in order.</param>
    /// <param name="bowler">Who threw them.</param>
    /// <param name="hand">With which hand.</param>
    /// <param name="lines">The name of the line that each shot was thrown at; null, or null for a shot, when that is not to be said.</param>
    public static void Write(TextWriter output, IEnumerable<Shot> shots, string bowler, Hand hand, IReadOnlyList<string?>? lines = null)
    {
        var all = shots.ToList();
        var saysLine = lines is not null && lines.Any(line => line is not null);
        var columns = Columns.Where(column => all.Exists(shot => column.Value(shot) is not null)).ToList();
        var distances = all.SelectMany(shot => shot.Crossings.AsEnumerable().Select(crossing => crossing.Distance)).Distinct().Order().ToList();
        var headings = columns.Select(column => column.Heading).Concat(saysLine ? ["line"] : []).Concat(["bowler", "hand"]).Concat(distances.Select(distance => $"boardAt{distance}"));
        WriteLine(output, headings);
        for (var i = 0; i < all.Count; i++)
        {
            var shot = all[i];
            var line = saysLine ? [Guarded(lines![i])] : Array.Empty<string?>();
            var crossings = distances.Select(distance => shot.Crossings.AsEnumerable().Where(crossing => crossing.Distance == distance)
                .Select(crossing => crossing.Board.ToString()).FirstOrDefault());
            WriteLine(output, columns.Select(column => column.Value(shot)).Concat(line).Concat([Guarded(bowler), hand == Hand.Right ? "right" : "left"]).Concat(crossings));
        }
    }

    private static void WriteLine(TextWriter output, IEnumerable<string?> cells) => output.WriteLine(string.Join(',', cells.Select(Quoted)));

    private static string? Guarded(string? text) => text is null ? null : FormulaGuard.Guarded(text);

    private static string Quoted(string? cell) => cell is null ? ""
        : cell.AsSpan().ContainsAny(Special) ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : cell;
}
