using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>From the lane to the picture of one projector, and the stretch of lane that it lights.</summary>
public sealed record ProjectorMap
{
    /// <summary>The picture that the pixels belong to.</summary>
    public required PictureSize Picture { get; init; }

    /// <summary>From lane inches (across from the right edge, down from the foul line) to pixels, before the lens bends them.</summary>
    public required Homography Homography { get; init; }

    /// <summary>What the lens does to those pixels.</summary>
    public LensDistortion Distortion { get; init; }

    /// <summary>The stretch that this projector draws.</summary>
    public LaneStretch Stretch { get; init; } = LaneStretch.Whole;

    /// <summary>The pixel of a point on the lane.</summary>
    public ProjectorPixel PixelOf(LanePoint point)
    {
        var (x, y) = Homography.Apply(point.Across.Value, point.Down.Value * 12);
        var (middleX, middleY) = (Picture.Width / 2.0, Picture.Height / 2.0);
        var unit = Math.Sqrt((middleX * middleX) + (middleY * middleY));
        var (dx, dy) = ((x - middleX) / unit, (y - middleY) / unit);
        var r2 = (dx * dx) + (dy * dy);
        var factor = 1 + (Distortion.K1 * r2) + (Distortion.K2 * r2 * r2);
        return new ProjectorPixel(middleX + (dx * factor * unit), middleY + (dy * factor * unit));
    }
}
