using System.Globalization;
using AimTrainer.Calibration;
using AimTrainer.Domain;
using Spectre.Console;

namespace AimTrainer.Output;

/// <summary>Fits and maps in words and tables.</summary>
internal static class CalibrationText
{
    /// <summary>Beyond this many boards an error is worth a word: a quarter of the narrowest target.</summary>
    private const double LargeError = 0.125;

    /// <summary>Why marks give no map, a line each, with the place in the file where it is known.</summary>
    public static IEnumerable<string> Refusals(string file, MarksFile marks, FitOutcome outcome) => outcome.Refusals.AsEnumerable().Select(refusal =>
    {
        var place = refusal.Marks.Count > 0 ? marks.Places[refusal.Marks[^1]] : default;
        return place.Line > 0 ? string.Create(CultureInfo.InvariantCulture, $"{file}:{place.Line}: {place.Path}: {refusal}") : $"{file}: {refusal}";
    });

    /// <summary>What a coach must know before a map is trusted; empty when there is nothing.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="lane">A lane as wide as the one that was fitted.</param>
    /// <param name="settings">How fine is fine enough.</param>
    public static IEnumerable<string> Warnings(MapFit fit, LaneProfile lane, ShowingSettings settings)
    {
        if (fit.Quality.SigmaPixels is null)
        {
            yield return "four marks always fit: nothing shows whether one of them is wrong. Place at least two more";
        }

        var worst = fit.Distances.AsEnumerable().Where(at => at.ErrorBoards is > LargeError).MaxBy(at => at.ErrorBoards);
        if (worst is not null)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"at {worst.Distance} ft the map is sure to {worst.ErrorBoards:0.00} board only. Place marks there, or keep the targets nearer to the marks");
        }

        var partly = fit.Distances.AsEnumerable().Where(at => at.Distance.Value >= 0 && at.Distance <= LaneProfile.HeadPin && !CoversTheWidth(fit, at.Distance)).ToList();
        if (partly.Count > 0)
        {
            yield return $"the picture leaves out a part of the lane's width at {string.Join(", ", partly.Select(at => at.Distance))} ft: no target can be shown there. "
                + "Turn the projector, or give a shorter stretch";
        }

        var coarse = fit.Distances.AsEnumerable().Select(at => TargetShowing.AtTheMiddle(fit.Map, BoardOffset.FromBoards(1), at.Distance, lane, settings))
            .Where(showing => showing.Result == ShowingResult.TooNarrow).MinBy(showing => showing.WidthPixels);
        if (coarse is not null)
        {
            yield return $"{coarse.Found}. What would help: {string.Join("; ", coarse.WouldHelp)}";
        }
    }

    private static bool CoversTheWidth(MapFit fit, Feet distance) => IsLit(fit, 0, distance) && IsLit(fit, fit.LaneWidth.Value, distance);

    private static bool IsLit(MapFit fit, double across, Feet distance) =>
        fit.Map.TryPixelOf(new LanePoint(Inches.FromInches(across), distance)) is { } pixel && fit.Map.Picture.Contains(pixel);

    public static void Fit(MapFit fit, IEnumerable<string> warnings, ShowingSettings settings, UserConsole console)
    {
        var output = Consoles.For(console);
        var quality = fit.Quality;
        output.WriteLine(Invariant($"Map from {fit.Marks.Count} marks, {fit.DistortionTerms} distortion terms; it draws {fit.Map.Stretch.From} to {fit.Map.Stretch.To} ft."));
        var (rms, worst) = (Known(quality.RmsBoards, "0.000"), Known(quality.WorstBoards, "0.000"));
        output.WriteLine(Invariant($"Error {quality.RmsPixels:0.00} px rms, {quality.WorstPixels:0.00} px worst; {rms} board rms, {worst} worst."));
        var (left, leftWorst) = (Known(quality.LeaveOneOutRmsPixels, "0.00"), Known(quality.LeaveOneOutWorstPixels, "0.00"));
        output.WriteLine(quality.LeaveOneOutRmsPixels is null
            ? Invariant($"Leave-one-out error unknown. Condition {quality.Condition:0.0}.")
            : Invariant($"Leave-one-out {left} px rms, {leftWorst} px worst. Condition {quality.Condition:0.0}."));
        output.WriteLine();
        var marks = Consoles.Table(
            ("mark", ColumnKind.Name), ("error px", ColumnKind.Number), ("boards", ColumnKind.Number), ("inches along", ColumnKind.Number), ("left out px", ColumnKind.Number));
        foreach (var (mark, i) in fit.Marks.AsEnumerable().Select((mark, i) => (mark, i)))
        {
            var name = mark.Mark.Name ?? Invariant($"mark {i + 1}: board {Board(mark.Mark.Lane, fit.LaneWidth):0.##} at {mark.Mark.Lane.Down} ft");
            marks.AddRow(Cells(name, Invariant($"{mark.Pixels:0.00}"), Known(mark.AcrossBoards, "0.000"), Known(mark.AlongInches, "0.00"), Known(mark.LeaveOneOutPixels, "0.00")));
        }

        Consoles.Write(output, marks);
        output.WriteLine();
        var distances = Consoles.Table(
            ("feet", ColumnKind.Number), ("pixel, boards", ColumnKind.Number), ("pixel, inches along", ColumnKind.Number), ("narrowest target, boards", ColumnKind.Number),
            ("sure to, boards", ColumnKind.Number));
        foreach (var at in fit.Distances)
        {
            distances.AddRow(Cells(
                Invariant($"{at.Distance}"), Invariant($"{at.PixelBoards:0.000}"), Invariant($"{at.PixelInches:0.00}"), Invariant($"{at.PixelBoards * settings.LeastPixels:0.00}"),
                Known(at.ErrorBoards, "0.000")));
        }

        Consoles.Write(output, distances);
        foreach (var warning in warnings)
        {
            output.WriteLine();
            output.WriteLine($"Please note: {warning}.");
        }

        output.WriteLine();
        foreach (var caution in PlacingCautions.All)
        {
            output.WriteLine(caution);
        }
    }

    public static void Points(IReadOnlyList<CalibrationMappedPoint> points, UserConsole console)
    {
        var table = Consoles.Table(
            ("board from right", ColumnKind.Number), ("feet", ColumnKind.Number), ("x", ColumnKind.Number), ("y", ColumnKind.Number), ("where", ColumnKind.Words));
        foreach (var point in points)
        {
            var where = point.Why ?? (point.InPicture ? point.InStretch ? "" : "outside of the stretch" : "beside the picture");
            table.AddRow(Cells(Known(point.BoardFromRight, "0.####"), Known(point.Feet, "0.####"), Known(point.X, "0.###"), Known(point.Y, "0.###"), where));
        }

        Consoles.Write(Consoles.For(console), table);
    }

    public static void Maps(IReadOnlyList<MapLoad> loads, UserConsole console)
    {
        if (loads.Count == 0)
        {
            console.Out.WriteLine("no map is saved yet");
            return;
        }

        var table = Consoles.Table(
            ("station", ColumnKind.Number), ("projector", ColumnKind.Name), ("monitor", ColumnKind.Name), ("feet", ColumnKind.Name), ("rms px", ColumnKind.Number),
            ("saved", ColumnKind.Name), ("", ColumnKind.Words));
        foreach (var load in loads)
        {
            table.AddRow(Cells(
                Invariant($"{load.Place.Station}"), load.Place.Projector, load.Map?.Monitor?.ToString() ?? "-",
                load.Map is { } map ? Invariant($"{map.Map.Stretch.From} to {map.Map.Stretch.To}") : "-", Known(load.Map?.RmsPixels, "0.00"),
                load.Map?.SavedAt?.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) ?? "-", load.Why));
        }

        Consoles.Write(Consoles.For(console), table);
    }

    public static double Board(LanePoint point, Inches laneWidth) => Math.Round(LaneScale.BoardOf(point.Across.Value, laneWidth), 10);

    private static Text[] Cells(params string[] cells) => [.. cells.Select(cell => new Text(cell))];

    private static string Known(double? value, string format)
    {
        var text = value?.ToString(format, CultureInfo.InvariantCulture) ?? "unknown";
        return text.AsSpan().TrimStart('-').ContainsAnyExcept("0.") ? text : text.TrimStart('-');
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
