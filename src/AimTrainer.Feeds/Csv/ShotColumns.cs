using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>The headings of a shot file.</summary>
internal static class ShotColumns
{
    /// <summary>What a heading that carries its distance begins with.</summary>
    public const string BoardAt = "boardAt";

    private static readonly (string Heading, ShotColumn Column)[] Headings =
    [
        ("id", ShotColumn.Id),
        ("time", ShotColumn.Time),
        ("bowler", ShotColumn.Bowler),
        ("hand", ShotColumn.Hand),
        ("ball", ShotColumn.Ball),
        ("line", ShotColumn.Line),
        ("laydownBoard", ShotColumn.LaydownBoard),
        ("arrowsBoard", ShotColumn.ArrowsBoard),
        ("breakpointBoard", ShotColumn.BreakpointBoard),
        ("breakpointFeet", ShotColumn.BreakpointFeet),
        ("entryBoard", ShotColumn.EntryBoard),
        ("speedMph", ShotColumn.SpeedMph),
        ("speedAt", ShotColumn.SpeedAt),
        ("revsRpm", ShotColumn.RevsRpm),
        ("axisRotationDeg", ShotColumn.AxisRotationDeg),
        ("axisTiltDeg", ShotColumn.AxisTiltDeg),
        ("launchAngleDeg", ShotColumn.LaunchAngleDeg),
        ("entryAngleDeg", ShotColumn.EntryAngleDeg),
        ("pins", ShotColumn.Pins),
        ("note", ShotColumn.Note),
    ];

    /// <summary>Every heading, for messages.</summary>
    public static string Known { get; } = string.Join(", ", Names());

    /// <summary>The headings that say where the ball was.</summary>
    public static string KnownCrossings => "laydownBoard, arrowsBoard, breakpointBoard, entryBoard or boardAt<feet> (such as boardAt15)";

    /// <summary>Every heading.</summary>
    public static IEnumerable<string> Names() => [.. Headings.Select(known => known.Heading), BoardAt + "<feet>"];

    /// <summary>The heading of a column.</summary>
    public static string HeadingOf(ShotColumn column, double feet) => column switch
    {
        ShotColumn.BoardAt => string.Create(CultureInfo.InvariantCulture, $"{BoardAt}{feet}"),
        ShotColumn.Ignore => "ignore",
        _ => Array.Find(Headings, known => known.Column == column).Heading,
    };

    /// <summary>Whether a column says where the ball was.</summary>
    public static bool IsPlace(ShotColumn column) => column is ShotColumn.LaydownBoard or ShotColumn.ArrowsBoard or ShotColumn.BreakpointBoard
        or ShotColumn.EntryBoard or ShotColumn.BoardAt;

    /// <summary>Whether a column is a direction.</summary>
    public static bool IsAngle(ShotColumn column) => column is ShotColumn.AxisRotationDeg or ShotColumn.AxisTiltDeg or ShotColumn.LaunchAngleDeg
        or ShotColumn.EntryAngleDeg;

    /// <summary>What a heading of ours means, without regard to case.</summary>
    /// <param name="heading">The heading, trimmed.</param>
    /// <param name="column">The column, when there is one.</param>
    /// <param name="feet">For <see cref="ShotColumn.BoardAt"/> the distance, which may lie outside 0 to 60; else 0.</param>
    public static bool TryFind(string heading, out ShotColumn column, out double feet)
    {
        feet = 0;
        foreach (var known in Headings)
        {
            if (known.Heading.Equals(heading, StringComparison.OrdinalIgnoreCase))
            {
                column = known.Column;
                return true;
            }
        }

        column = ShotColumn.BoardAt;
        return heading.StartsWith(BoardAt, StringComparison.OrdinalIgnoreCase)
            && double.TryParse(heading.AsSpan(BoardAt.Length), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out feet);
    }

    /// <summary>The heading of ours that is spelled most like a word, or null when none is near.</summary>
    public static string? Nearest(string word) => Likeness.Nearest(word, Names());
}
