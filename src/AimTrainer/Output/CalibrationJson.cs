using AimTrainer.Calibration;

namespace AimTrainer.Output;

/// <summary>Fits and maps as JSON for machines; told in <c>docs/calibration.md</c>. Numbers have all their digits.</summary>
internal static class CalibrationJson
{
    public static object Refused(FitOutcome outcome) => new
    {
        Ok = false,
        Refusals = outcome.Refusals.AsEnumerable().Select(refusal => new { Reason = Json.Word(refusal.Reason), Marks = refusal.Marks.AsEnumerable(), refusal.Found, refusal.ToDo }),
    };

    public static object Fitted(MapFit fit, string? file, IEnumerable<string> warnings, ShowingSettings settings)
    {
        var (map, quality) = (fit.Map, fit.Quality);
        return new
        {
            Ok = true,
            Out = file,
            Picture = new { map.Picture.Width, map.Picture.Height },
            LaneWidthInches = fit.LaneWidth.Value,
            Stretch = new
            {
                FromFeet = map.Stretch.From.Value,
                ToFeet = map.Stretch.To.Value,
                NearOverlapFeet = map.Stretch.NearOverlap.Value,
                FarOverlapFeet = map.Stretch.FarOverlap.Value,
            },
            Matrix = Rows(map.Homography),
            Distortion = new { Terms = fit.DistortionTerms, map.Distortion.K1, map.Distortion.K2 },
            quality.RmsPixels,
            quality.WorstPixels,
            quality.RmsBoards,
            quality.WorstBoards,
            LeaveOneOutPixels = quality.LeaveOneOutRmsPixels,
            quality.LeaveOneOutWorstPixels,
            quality.SigmaPixels,
            Condition = Finite(quality.Condition),
            Marks = fit.Marks.AsEnumerable().Select(mark => new
            {
                mark.Mark.Name,
                BoardFromRight = CalibrationText.Board(mark.Mark.Lane, fit.LaneWidth),
                Feet = mark.Mark.Lane.Down.Value,
                mark.Mark.Pixel.X,
                mark.Mark.Pixel.Y,
                ErrorPixels = mark.Pixels,
                ErrorXPixels = mark.XPixels,
                ErrorYPixels = mark.YPixels,
                ErrorBoards = mark.AcrossBoards,
                ErrorInches = mark.AlongInches,
                mark.LeaveOneOutPixels,
            }),
            Distances = fit.Distances.AsEnumerable().Select(at => new
            {
                Feet = at.Distance.Value,
                at.PixelBoards,
                at.PixelInches,
                NarrowestTargetBoards = at.PixelBoards * settings.LeastPixels,
                OneBoardPixels = 1 / at.PixelBoards,
                OneBoardShown = 1 / at.PixelBoards >= settings.LeastPixels,
                ErrorPerPixel = Finite(at.ErrorPerPixel),
                ErrorBoards = Finite(at.ErrorBoards),
            }),
            Warnings = warnings,
            Cautions = PlacingCautions.All.AsEnumerable(),
        };
    }

    public static object Points(IReadOnlyList<CalibrationMappedPoint> points) => new { Points = points };

    public static object Maps(IReadOnlyList<MapLoad> loads) => new
    {
        Maps = loads.Select(load => new
        {
            load.Place.Station,
            load.Place.Projector,
            Ok = load.Map is not null && load.Broken.Count == 0,
            load.File,
            Monitor = load.Map?.Monitor is { } monitor ? new { Name = monitor.Monitor, monitor.Size.Width, monitor.Size.Height, monitor.RefreshHertz } : null,
            load.Map?.SavedAt,
            load.Map?.RmsPixels,
            load.Map?.LeaveOneOutPixels,
            load.Why,
            Problems = load.Broken.AsEnumerable().Select(problem => new { problem.File, problem.Line, problem.Path, problem.Found, problem.Allowed }),
        }),
    };

    private static double[][] Rows(Homography h) => [[h.M11, h.M12, h.M13], [h.M21, h.M22, h.M23], [h.M31, h.M32, h.M33]];

    private static double? Finite(double? value) => value is { } known && double.IsFinite(known) ? known : null;
}
