using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>From the lane to the picture of one projector, and the stretch of lane that it lights.</summary>
public sealed record ProjectorMap
{
    /// <summary>Inches from the right edge to the middle of a lane of usual width; only a place that is surely on any lane.</summary>
    private const double AboutTheMiddle = 20.75;

    /// <summary>The picture that the pixels belong to.</summary>
    public required PictureSize Picture { get; init; }

    /// <summary>From lane inches (across from the right edge, down from the foul line) to pixels, before the lens bends them.</summary>
    public required Homography Homography { get; init; }

    /// <summary>What the lens does to those pixels.</summary>
    public LensDistortion Distortion { get; init; }

    /// <summary>The stretch that this projector draws.</summary>
    public LaneStretch Stretch { get; init; } = LaneStretch.Whole;

    /// <summary>
    /// The pixel of a point on the lane. Right for every point of the stretch; a point behind the projector or beyond the reach of the
    /// lens formula gets a pixel that means nothing (<see cref="TryPixelOf"/> says so).
    /// </summary>
    public ProjectorPixel PixelOf(LanePoint point)
    {
        var (x, y) = Homography.Apply(point.Across.Value, point.Down.Value * 12);
        return Distortion.Bend(x, y, Picture);
    }

    /// <summary>The pixel of a point on the lane, in the picture or beside it; null when the projector could not light it wherever it was turned.</summary>
    public ProjectorPixel? TryPixelOf(LanePoint point)
    {
        var (across, down) = (point.Across.Value, point.Down.Value * 12);
        if (!IsBefore(across, down))
        {
            return null;
        }

        var (x, y) = Homography.Apply(across, down);
        var unit = Picture.HalfDiagonal;
        var (dx, dy) = ((x - (Picture.Width / 2.0)) / unit, (y - (Picture.Height / 2.0)) / unit);
        return Math.Sqrt((dx * dx) + (dy * dy)) <= Distortion.Reach ? Distortion.Bend(x, y, Picture) : null;
    }

    /// <summary>
    /// The point of the lane's plane that a pixel lights. Null outside of what the map can tell: above the horizon, beyond the reach of
    /// the lens formula, or farther away than a <see cref="LanePoint"/> goes. Whether the pixel is in the picture at all says
    /// <see cref="PictureSize.Contains"/>.
    /// </summary>
    public LanePoint? LanePointOf(ProjectorPixel pixel)
    {
        if (Distortion.Straighten(pixel, Picture) is not { } straight)
        {
            return null;
        }

        var (across, down) = Homography.Inverted().Apply(straight.X, straight.Y);
        if (!double.IsFinite(across) || !double.IsFinite(down) || !IsBefore(across, down))
        {
            return null;
        }

        // One Newton step gives back the digits that inverting a matrix of such unequal numbers costs.
        var (x, y) = Homography.Apply(across, down);
        var (xx, xy, yx, yy) = StraightSlopes(across, down);
        var determinant = (xx * yy) - (xy * yx);
        var (ex, ey) = (straight.X - x, straight.Y - y);
        across += ((yy * ex) - (xy * ey)) / determinant;
        down = (down + (((xx * ey) - (yx * ex)) / determinant)) / 12;
        return across >= Inches.Minimum && across <= Inches.Maximum && down >= Feet.Minimum && down <= Feet.Maximum
            ? new LanePoint(Inches.FromInches(across), Feet.FromFeet(down))
            : null;
    }

    /// <summary>How fine the picture is at a point of the stretch.</summary>
    public PixelSize PixelSizeAt(LanePoint point)
    {
        var (across, down) = (point.Across.Value, point.Down.Value * 12);
        var (xa, xd, ya, yd) = StraightSlopes(across, down);
        var (x, y) = Homography.Apply(across, down);
        var bend = Distortion.Slopes(x, y, Picture);
        (xa, ya) = ((bend.Xx * xa) + (bend.Xy * ya), (bend.Yx * xa) + (bend.Yy * ya));
        (xd, yd) = ((bend.Xx * xd) + (bend.Xy * yd), (bend.Yx * xd) + (bend.Yy * yd));
        var area = Math.Abs((xa * yd) - (xd * ya));
        return new PixelSize(Math.Sqrt((xd * xd) + (yd * yd)) / area, Math.Sqrt((xa * xa) + (ya * ya)) / area);
    }

    /// <summary>Whether a place lies on the same side of the map's horizon as the middle of the stretch.</summary>
    private bool IsBefore(double acrossInches, double downInches) =>
        Homography.Third(acrossInches, downInches) * Homography.Third(AboutTheMiddle, (Stretch.From.Value + Stretch.To.Value) * 6) > 0;

    private (double Xx, double Xy, double Yx, double Yy) StraightSlopes(double across, double down)
    {
        var h = Homography;
        var w = h.Third(across, down);
        var (x, y) = h.Apply(across, down);
        return ((h.M11 - (x * h.M31)) / w, (h.M12 - (x * h.M32)) / w, (h.M21 - (y * h.M31)) / w, (h.M22 - (y * h.M32)) / w);
    }
}
