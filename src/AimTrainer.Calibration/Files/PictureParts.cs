using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>The parts that files about maps have in common.</summary>
internal static class PictureParts
{
    public const int MostPixels = 1 << 15;
    public const int MostMarks = 500;
    private const double FarthestPixel = 1e6;

    public static PictureSize? Picture(ObjectReader? picture)
    {
        if (picture is null)
        {
            return null;
        }

        var (width, height) = (picture.Whole("width", 1, MostPixels), picture.Whole("height", 1, MostPixels));
        picture.Done();
        return width is { } w && height is { } h ? new PictureSize((int)w, (int)h) : null;
    }

    public static LaneStretch? Stretch(ObjectReader? stretch)
    {
        if (stretch is null)
        {
            return null;
        }

        var (from, to) = (stretch.Number("fromFeet", Feet.Minimum, Feet.Maximum), stretch.Number("toFeet", Feet.Minimum, Feet.Maximum));
        var length = Feet.Maximum - Feet.Minimum;
        var (near, far) = (stretch.OptionalNumber("nearOverlapFeet", 0, length) ?? 0, stretch.OptionalNumber("farOverlapFeet", 0, length) ?? 0);
        stretch.Done();
        if (from is not { } start || to is not { } end)
        {
            return null;
        }

        if (end <= start)
        {
            stretch.Report("toFeet", FoundText.Short(end.ToString(System.Globalization.CultureInfo.InvariantCulture)), "more than fromFeet");
            return null;
        }

        if (near + far > end - start || near > Feet.Maximum || far > Feet.Maximum)
        {
            stretch.Report("overlaps longer than the stretch", "nearOverlapFeet and farOverlapFeet that together are no longer than the stretch");
            return null;
        }

        return new LaneStretch(Feet.FromFeet(start), Feet.FromFeet(end), Feet.FromFeet(near), Feet.FromFeet(far));
    }

    public static CalibrationMark? Mark(ObjectReader mark, Inches laneWidth)
    {
        var name = mark.OptionalText("name", 80);
        var place = Place(mark, laneWidth);
        var (x, y) = (Pixel(mark, "x"), Pixel(mark, "y"));
        mark.Done();
        return place is { } lane && x is { } px && y is { } py ? new CalibrationMark(lane, new ProjectorPixel(px, py), name) : null;
    }

    public static LanePoint? Place(ObjectReader point, Inches laneWidth)
    {
        var (board, feet) = (point.Number("boardFromRight", Board.Minimum, Board.Maximum), point.Number("feet", Feet.Minimum, Feet.Maximum));
        return board is { } b && feet is { } f ? new LanePoint(Inches.FromInches(LaneScale.InchesOf(b, laneWidth)), Feet.FromFeet(f)) : null;
    }

    public static double? Pixel(ObjectReader point, string name) => point.Number(name, -FarthestPixel, FarthestPixel);
}
