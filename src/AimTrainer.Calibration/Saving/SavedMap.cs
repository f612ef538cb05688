using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>A map as it is kept: with what it was fitted to, how good it was, and what it holds for.</summary>
public sealed record SavedMap
{
    /// <summary>Which projector of which lane; null when nobody said.</summary>
    public MapPlace? Place { get; init; }

    /// <summary>The monitor and mode that it holds for; null when nobody said.</summary>
    public MonitorMode? Monitor { get; init; }

    /// <summary>When it was saved; null when nobody said.</summary>
    public DateTimeOffset? SavedAt { get; init; }

    /// <summary>The map.</summary>
    public required ProjectorMap Map { get; init; }

    /// <summary>The lane's width.</summary>
    public required Inches LaneWidth { get; init; }

    /// <summary>How many terms of distortion were fitted.</summary>
    public required int DistortionTerms { get; init; }

    /// <summary>The marks that it was fitted to.</summary>
    public required ValueList<CalibrationMark> Marks { get; init; }

    /// <summary>Root mean square error of the marks, in pixels; null when not known.</summary>
    public double? RmsPixels { get; init; }

    /// <summary>The largest error of a mark, in pixels; null when not known.</summary>
    public double? WorstPixels { get; init; }

    /// <summary>Root mean square leave-one-out error, in pixels; null when not known.</summary>
    public double? LeaveOneOutPixels { get; init; }

    /// <summary>What is kept of a fit.</summary>
    public static SavedMap Of(MapFit fit) => new()
    {
        Map = fit.Map,
        LaneWidth = fit.LaneWidth,
        DistortionTerms = fit.DistortionTerms,
        Marks = fit.Marks.AsEnumerable().Select(mark => mark.Mark).ToValueList(),
        RmsPixels = fit.Quality.RmsPixels,
        WorstPixels = fit.Quality.WorstPixels,
        LeaveOneOutPixels = fit.Quality.LeaveOneOutRmsPixels,
    };
}
