using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>Reads a file of points. The format is told in <c>docs/calibration.md</c>.</summary>
public static class PointsFileReader
{
    private const int Format = 1;
    private const int MostPoints = 100_000;

    /// <summary>Reads a file of points, or everything that is wrong with it.</summary>
    /// <param name="fileName">The file as the user named it, for messages.</param>
    /// <param name="utf8">The whole file.</param>
    /// <param name="laneWidth">The width of the map's lane: boards are counted by it.</param>
    public static FileRead<MapQuestions> Read(string fileName, ReadOnlySpan<byte> utf8, Inches laneWidth)
    {
        var file = JsonFile.Read(fileName, utf8);
        var points = file.Root is { } root && ObjectReader.Of(file, root) is { } reader ? Points(reader, laneWidth) : null;
        return new FileRead<MapQuestions>(file.HasProblems ? null : points, file.Problems);
    }

    private static MapQuestions Points(ObjectReader file, Inches laneWidth)
    {
        file.OptionalText("$schema", 500);
        file.OptionalWhole("format", Format, Format);
        var points = (file.Objects("points", 0, MostPoints, "points") ?? []).Select(point => Point(point, laneWidth)).OfType<MapQuestion>().ToValueList();
        file.Done();
        return new MapQuestions(points);
    }

    private static MapQuestion? Point(ObjectReader point, Inches laneWidth)
    {
        var has = point.ExactlyOne("boardFromRight", "x");
        var question = has switch
        {
            "boardFromRight" => PictureParts.Place(point, laneWidth) is { } lane ? new MapQuestion(lane, null) : null,
            "x" => Pixel(point) is { } pixel ? new MapQuestion(null, pixel) : null,
            _ => null,
        };
        if (has is not null)
        {
            point.Done();
        }

        return question;
    }

    private static ProjectorPixel? Pixel(ObjectReader point)
    {
        var (x, y) = (PictureParts.Pixel(point, "x"), PictureParts.Pixel(point, "y"));
        return x is { } right && y is { } down ? new ProjectorPixel(right, down) : null;
    }
}
