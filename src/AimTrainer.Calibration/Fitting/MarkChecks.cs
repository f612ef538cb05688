using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>What can be said of marks before any map is fitted.</summary>
internal static class MarkChecks
{
    /// <summary>Marks nearer than this on the lane are one place.</summary>
    private const double SameInches = 0.1;

    /// <summary>Pixels nearer than this are one place: nobody sets two marks of a lane so close by eye.</summary>
    private const double SamePixels = 0.25;

    /// <summary>
    /// Marks nearer than this to a line through two others lie on it. Small, because the marks of a lane that lie in a line (a row of
    /// dots, one side of the arrows) do so exactly; how much marks nearly in a line cost says <see cref="DistanceQuality.ErrorPerPixel"/>.
    /// </summary>
    private const double OnLineInches = 0.05, OnLinePixels = 0.25;

    public static IEnumerable<FitRefusal> Refusals(IReadOnlyList<CalibrationMark> marks, FitSettings settings)
    {
        var words = new MarkWords(marks, settings);
        List<FitRefusal> refusals = [.. TooFew(marks, settings), .. OffPicture(marks, settings, words), .. Duplicates(marks, words)];
        return refusals.Count > 0 ? refusals : InALine(marks, words);
    }

    /// <summary>Whether no four of the marks, on the lane or in the picture, are free of three in a line: all, or all but one, then lie on one.</summary>
    /// <param name="marks">The marks.</param>
    /// <param name="mostOff">How many marks beside the line still count as all of them lying on it.</param>
    public static bool AreInALine(MarkArrays marks, int mostOff = 1) =>
        OnOneLine(marks.Across, marks.Down, OnLineInches, mostOff).Count > 0 || OnOneLine(marks.X, marks.Y, OnLinePixels, mostOff).Count > 0;

    private static IEnumerable<FitRefusal> TooFew(IReadOnlyList<CalibrationMark> marks, FitSettings settings)
    {
        var needed = FitSettings.MarksNeeded(settings.DistortionTerms);
        if (marks.Count >= needed)
        {
            yield break;
        }

        var found = marks.Count switch { 0 => "there is no mark", 1 => "there is 1 mark", _ => FormattableString.Invariant($"there are {marks.Count} marks") };
        yield return settings.DistortionTerms == 0
            ? new FitRefusal(FitRefusalReason.TooFewMarks, [], $"{found}; a map needs at least {needed}", "Place more, spread over the whole stretch of lane")
            : new FitRefusal(
                FitRefusalReason.TooFewMarks, [], $"{found}; a map with {Terms(settings.DistortionTerms)} needs at least {needed}",
                "Place more, out to the corners of the picture, or fit fewer distortion terms");
    }

    private static IEnumerable<FitRefusal> OffPicture(IReadOnlyList<CalibrationMark> marks, FitSettings settings, MarkWords words)
    {
        for (var i = 0; i < marks.Count; i++)
        {
            // A pixel that is no number is in no picture either.
            if (!settings.Picture.Contains(marks[i].Pixel))
            {
                yield return new FitRefusal(
                    FitRefusalReason.OffPicture, [i],
                    $"{words[i]} is at {LaneScale.Words(marks[i].Pixel)}, outside of the picture of {settings.Picture.Width} x {settings.Picture.Height}",
                    "Place it again, or give the size of the picture that the marks were placed in");
            }
        }
    }

    private static IEnumerable<FitRefusal> Duplicates(IReadOnlyList<CalibrationMark> marks, MarkWords words)
    {
        for (var i = 0; i < marks.Count; i++)
        {
            for (var j = i + 1; j < marks.Count; j++)
            {
                var (a, b) = (marks[i], marks[j]);
                if (Distance(a.Lane.Across.Value - b.Lane.Across.Value, (a.Lane.Down.Value - b.Lane.Down.Value) * 12) < SameInches)
                {
                    yield return new FitRefusal(
                        FitRefusalReason.DuplicateMarks, [i, j], $"{words[i]} and {words[j]} are the same place on the lane", "Drop one of them");
                }
                else if (Distance(a.Pixel.X - b.Pixel.X, a.Pixel.Y - b.Pixel.Y) < SamePixels)
                {
                    yield return new FitRefusal(
                        FitRefusalReason.DuplicateMarks, [i, j], $"{words[i]} and {words[j]} have the same {LaneScale.Words(a.Pixel)}",
                        "One of them was set without moving the crosshair: place it again, or drop it");
                }
            }
        }
    }

    private static IEnumerable<FitRefusal> InALine(IReadOnlyList<CalibrationMark> marks, MarkWords words)
    {
        var arrays = MarkArrays.Of(marks);
        var onLane = OnOneLine(arrays.Across, arrays.Down, OnLineInches, mostOff: 1);
        var line = onLane.Count > 0 ? onLane : OnOneLine(arrays.X, arrays.Y, OnLinePixels, mostOff: 1);
        if (line.Count > 0)
        {
            var where = onLane.Count > 0 ? "on the lane" : "in the picture";
            var rest = marks.Count == line.Count ? "no mark beside it" : "only one mark beside it";
            yield return new FitRefusal(
                FitRefusalReason.InALine, line.ToValueList(),
                $"{(line.Count == 3 ? $"{words[line[0]]}, {words[line[1]]} and {words[line[2]]}" : $"marks {MarkWords.Numbers(line)}")} lie in a line {where}, with {rest}",
                "Place two more marks well off that line, near both edges of the lane");
        }
    }

    /// <summary>The marks on one line when at most so many are off it; else none.</summary>
    private static List<int> OnOneLine(double[] x, double[] y, double tolerance, int mostOff)
    {
        for (var i = 0; i < x.Length; i++)
        {
            for (var j = i + 1; j < x.Length; j++)
            {
                var (dx, dy) = (x[j] - x[i], y[j] - y[i]);
                var length = Distance(dx, dy);
                var off = 0;
                for (var k = 0; k < x.Length && off <= mostOff; k++)
                {
                    off += Math.Abs((dx * (y[k] - y[i])) - (dy * (x[k] - x[i]))) > tolerance * length ? 1 : 0;
                }

                if (off <= mostOff)
                {
                    return [.. Enumerable.Range(0, x.Length).Where(k => Math.Abs((dx * (y[k] - y[i])) - (dy * (x[k] - x[i]))) <= tolerance * length)];
                }
            }
        }

        return [];
    }

    private static string Terms(int terms) => terms == 1 ? "1 distortion term" : $"{terms} distortion terms";

    private static double Distance(double x, double y) => Math.Sqrt((x * x) + (y * y));
}
