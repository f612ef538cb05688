using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>Reads a saved map. The format is told in <c>docs/calibration.md</c>.</summary>
public static class MapFileReader
{
    private const int Format = 1;
    private const double MostInMatrix = 1e12;

    /// <summary>Reads a map, or everything that is wrong with it. A map that folds the lane or shows it as in a mirror is wrong too.</summary>
    /// <param name="fileName">The file as the user named it, for messages.</param>
    /// <param name="utf8">The whole file.</param>
    public static FileRead<SavedMap> Read(string fileName, ReadOnlySpan<byte> utf8)
    {
        var file = JsonFile.Read(fileName, utf8);
        var map = file.Root is { } root && ObjectReader.Of(file, root) is { } reader ? Map(reader) : null;
        return new FileRead<SavedMap>(file.HasProblems ? null : map, file.Problems);
    }

    private static SavedMap? Map(ObjectReader file)
    {
        file.OptionalText("$schema", 500);
        file.Whole("format", Format, Format);
        var place = Place(file);
        var monitor = Monitor(file.OptionalObject("monitor"));
        var savedAt = SavedAt(file);
        var picture = PictureParts.Picture(file.Object("picture"));
        var width = file.Number("laneWidthInches", LaneProfile.NarrowestWidth.Value, LaneProfile.WidestWidth.Value);
        var matrix = file.Rows("matrix", 3, 3, -MostInMatrix, MostInMatrix);
        var (terms, lens) = Lens(file.Object("distortion"));
        var stretch = PictureParts.Stretch(file.Object("stretch"));
        var marks = (file.OptionalObjects("marks", 0, PictureParts.MostMarks, "marks") ?? [])
            .Select(mark => PictureParts.Mark(mark, Inches.FromInches(width ?? LaneProfile.NarrowestWidth.Value))).OfType<CalibrationMark>().ToValueList();
        var (rms, worst, left) = (Error(file, "rmsPixels"), Error(file, "worstPixels"), Error(file, "leaveOneOutPixels"));
        file.Done();
        if (picture is not { } size || width is not { } inches || matrix is null || stretch is null)
        {
            return null;
        }

        if (monitor is not null && monitor.Size != size)
        {
            file.Report("monitor", monitor.ToString(), "the mode whose picture the map is for");
        }

        var map = new ProjectorMap { Picture = size, Homography = Turned(matrix, stretch), Distortion = lens, Stretch = stretch };
        Check(file, map, inches);
        return new SavedMap
        {
            Place = place,
            Monitor = monitor,
            SavedAt = savedAt,
            Map = map,
            LaneWidth = Inches.FromInches(inches),
            DistortionTerms = terms,
            Marks = marks,
            RmsPixels = rms,
            WorstPixels = worst,
            LeaveOneOutPixels = left,
        };
    }

    private static MapPlace? Place(ObjectReader file)
    {
        var (station, projector) = (file.OptionalWhole("station", 1, MapPlace.MostStation), file.OptionalText("projector", MapPlace.LongestName));
        if (station is null && projector is null)
        {
            return null;
        }

        var place = new MapPlace((int)(station ?? 1), projector ?? MapPlace.OnlyProjector);
        if (place.Problem is not null)
        {
            file.Report("projector", FoundText.Quoted(place.Projector), "small letters, digits and hyphens");
        }

        return place;
    }

    private static MonitorMode? Monitor(ObjectReader? monitor)
    {
        if (monitor is null)
        {
            return null;
        }

        var name = monitor.Text("name", 200);
        var (width, height) = (monitor.Whole("width", 1, PictureParts.MostPixels), monitor.Whole("height", 1, PictureParts.MostPixels));

        // A system that does not say how often it refreshes gives 0, and a map must hold there too.
        var hertz = monitor.Whole("refreshHertz", 0, 1000);
        monitor.Done();
        return name is not null && width is { } w && height is { } h && hertz is { } rate ? new MonitorMode(name, new PictureSize((int)w, (int)h), (int)rate) : null;
    }

    private static DateTimeOffset? SavedAt(ObjectReader file)
    {
        if (file.OptionalText("savedAt", 40) is not { } text)
        {
            return null;
        }

        if (DateTimeOffset.TryParseExact(text, "O", CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out var time))
        {
            return time;
        }

        file.Report("savedAt", FoundText.Quoted(text), "a time, as 2026-03-02T18:00:00.0000000+00:00");
        return null;
    }

    private static (int Terms, LensDistortion Lens) Lens(ObjectReader? distortion)
    {
        if (distortion is null)
        {
            return default;
        }

        var (terms, k1, k2) = (distortion.Whole("terms", 0, FitSettings.MostTerms), distortion.Number("k1", -10, 10), distortion.Number("k2", -10, 10));
        distortion.Done();
        return ((int)(terms ?? 0), new LensDistortion(k1 ?? 0, k2 ?? 0));
    }

    private static double? Error(ObjectReader file, string name) => file.OptionalNumber(name, 0, 1e6);

    private static Homography Turned(IReadOnlyList<double> m, LaneStretch stretch)
    {
        var matrix = new Homography(m[0], m[1], m[2], m[3], m[4], m[5], m[6], m[7], m[8]);
        return matrix.Third(0, (stretch.From.Value + stretch.To.Value) * 6) < 0 ? matrix.Times(-1) : matrix;
    }

    private static void Check(ObjectReader file, ProjectorMap map, double laneWidth)
    {
        foreach (var end in (ReadOnlySpan<Feet>)[map.Stretch.From, map.Stretch.To])
        {
            if (!(map.Homography.Third(0, end.Value * 12) > 0) || !(map.Homography.Third(laneWidth, end.Value * 12) > 0))
            {
                file.Report("matrix", "a matrix that folds the lane within its stretch", "a matrix as \"calibrate fit\" writes it, or a shorter stretch");
                return;
            }
        }

        if (!(map.Homography.Determinant > 0))
        {
            file.Report("matrix", "a matrix that shows the lane as in a mirror, or as a line", "a matrix as \"calibrate fit\" writes it");
        }

        if (!map.Distortion.CoversPicture)
        {
            file.Report("distortion", "a lens that folds the picture over on itself", "terms as \"calibrate fit\" writes them");
        }
    }
}
