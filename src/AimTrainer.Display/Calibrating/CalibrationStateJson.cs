using System.Text.Json;
using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>Writes a calibration as plain data. The members are told in <c>docs/calibration.md</c>; what is unknown is left out.</summary>
internal static class CalibrationStateJson
{
    public static string Of(CalibrationView view)
    {
        var placing = view.Placing;
        var fit = placing.Preview?.Fit;
        return JsonSerializer.Serialize(
            new
            {
                view.Version,
                view.Task.Place.Station,
                view.Task.Place.Projector,
                Monitor = view.Monitor is { } monitor ? new { Name = monitor.Monitor, monitor.Size.Width, monitor.Size.Height, monitor.RefreshHertz } : null,
                Picture = new { placing.Fitting.Picture.Width, placing.Fitting.Picture.Height },
                placing.Phase,
                Current = placing.Current + 1,
                Crosshair = new { placing.Crosshair.X, placing.Crosshair.Y },
                Marks = placing.Marks.AsEnumerable().Select((mark, i) => MarkOf(mark, i + 1, fit, placing.Fitting.LaneWidth)),
                placing.QuarterTurns,
                Steps = new { placing.Steps.FinePixels, placing.Steps.CoarsePixels },
                placing.Fitting.DistortionTerms,
                Fit = fit is null ? null : new
                {
                    fit.Quality.RmsPixels,
                    fit.Quality.WorstPixels,
                    fit.Quality.RmsBoards,
                    fit.Quality.WorstBoards,
                    LeaveOneOutPixels = fit.Quality.LeaveOneOutRmsPixels,
                    FromFeet = fit.Map.Stretch.From.Value,
                    ToFeet = fit.Map.Stretch.To.Value,
                },
                CheckPicture = placing.Checking || placing.Phase == PlacingPhase.Accepted,
                Distances = fit is null ? null : fit.Distances.AsEnumerable().Select(at => DistanceOf(at, fit, view.Task.Lane)),
                Refusals = (placing.Preview?.Refusals ?? []).AsEnumerable().Select(refusal => new { refusal.Reason, refusal.Found, refusal.ToDo }),
                placing.Said,
                placing.ToDo,
                Undoes = placing.Past.Count > 0 ? placing.Past[^1].What : null,
                Saved = view.SavedFile is { } file ? Path.GetFileName(file) : null,
                view.Trouble,
                Cautions = placing.Cautions.AsEnumerable(),
            },
            DomainJson.Options);
    }

    /// <summary>How narrow a target can be shown there; whether one of a single board can.</summary>
    private static object DistanceOf(DistanceQuality at, MapFit fit, LaneProfile lane)
    {
        var oneBoard = TargetShowing.AtTheMiddle(fit.Map, BoardOffset.FromBoards(1), at.Distance, lane, ShowingSettings.Usual);
        return new
        {
            Feet = at.Distance.Value,
            OneBoard = oneBoard.Result,
            NarrowestTargetBoards = oneBoard.NarrowestBoards,
            at.ErrorBoards,
        };
    }

    private static object MarkOf(PlacedMark mark, int number, MapFit? fit, Inches laneWidth)
    {
        // The same lane point is never placed twice, so it tells which error is this mark's.
        var error = mark.Pixel is null ? null : fit?.Marks.AsEnumerable().FirstOrDefault(each => each.Mark.Lane == mark.Lane);
        return new
        {
            Number = number,
            mark.Name,
            BoardFromRight = LaneScale.BoardOf(mark.Lane.Across.Value, laneWidth),
            Feet = mark.Lane.Down.Value,
            State = mark.Pixel is not null ? "set" : mark.Skipped ? "leftOut" : "open",
            mark.Pixel?.X,
            mark.Pixel?.Y,
            ErrorPixels = error?.Pixels,
            ErrorBoards = error?.AcrossBoards,
            LeaveOneOutPixels = error?.LeaveOneOutPixels,
        };
    }
}
