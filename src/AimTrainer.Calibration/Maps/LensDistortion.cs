namespace AimTrainer.Calibration;

/// <summary>
/// Two radial terms about the middle of the picture: a place at distance r from the middle (in half diagonals of the picture) moves to
/// r (1 + K1 r^2 + K2 r^4).
/// </summary>
/// <param name="K1">The first term; 0 is none.</param>
/// <param name="K2">The second term; 0 is none.</param>
public readonly record struct LensDistortion(double K1, double K2)
{
    /// <summary>
    /// How far from the middle, in half diagonals and before bending, places still move outward together. Beyond it the formula
    /// folds the picture back on itself and means nothing. Infinite when it never does.
    /// </summary>
    public double Reach
    {
        get
        {
            // The slope 1 + 3 K1 s + 5 K2 s^2, with s = r^2, first comes to 0 here.
            var (a, b) = (5 * K2, 3 * K1);
            if (a == 0)
            {
                return b < 0 ? Math.Sqrt(-1 / b) : double.PositiveInfinity;
            }

            var inside = (b * b) - (4 * a);
            if (inside < 0)
            {
                return double.PositiveInfinity;
            }

            // The form of the quadratic formula that loses no digits.
            var q = -0.5 * (b + (Math.CopySign(1, b) * Math.Sqrt(inside)));
            var (first, second) = (q / a, q == 0 ? double.NaN : 1 / q);
            var smallest = double.PositiveInfinity;
            smallest = first > 0 ? Math.Min(smallest, first) : smallest;
            smallest = second > 0 ? Math.Min(smallest, second) : smallest;
            return Math.Sqrt(smallest);
        }
    }

    /// <summary>Whether places move outward together all the way to the corners of the picture.</summary>
    public bool CoversPicture => Reach is var reach && (double.IsPositiveInfinity(reach) || Bent(reach) >= 1);

    /// <summary>Where a distance from the middle moves to, both in half diagonals.</summary>
    public double Bent(double radius)
    {
        var r2 = radius * radius;
        return radius * (1 + (r2 * (K1 + (K2 * r2))));
    }

    /// <summary>The distance from the middle that moves to a given one, both in half diagonals; null when none within <see cref="Reach"/> does.</summary>
    public double? Straightened(double bent)
    {
        if (K1 == 0 && K2 == 0)
        {
            return bent;
        }

        var reach = Reach;
        if (!double.IsFinite(bent) || (double.IsFinite(reach) && bent > Bent(reach)))
        {
            return null;
        }

        var (low, high) = (0.0, double.IsFinite(reach) ? reach : 1.0);
        while (Bent(high) < bent)
        {
            high *= 2;
        }

        // Newton's steps; where one would leave what is known to hold the answer, the middle of it is taken.
        var radius = Math.Min(bent, high);
        for (var i = 0; i < 100; i++)
        {
            var over = Bent(radius) - bent;
            (low, high) = over > 0 ? (low, radius) : (radius, high);
            var r2 = radius * radius;
            var next = radius - (over / (1 + (r2 * ((3 * K1) + (5 * K2 * r2)))));
            next = next >= low && next <= high ? next : (low + high) / 2;
            if (Math.Abs(next - radius) <= 1e-16 * radius)
            {
                return next;
            }

            radius = next;
        }

        return radius;
    }

    /// <summary>Where the lens moves a pixel to. Beyond <see cref="Reach"/> the answer means nothing.</summary>
    /// <param name="x">To the right, in pixels, before bending.</param>
    /// <param name="y">Down.</param>
    /// <param name="picture">The picture about whose middle it bends.</param>
    public ProjectorPixel Bend(double x, double y, PictureSize picture)
    {
        var (middleX, middleY, unit) = (picture.Width / 2.0, picture.Height / 2.0, picture.HalfDiagonal);
        var (dx, dy) = ((x - middleX) / unit, (y - middleY) / unit);
        var r2 = (dx * dx) + (dy * dy);
        var factor = 1 + (K1 * r2) + (K2 * r2 * r2);
        return new ProjectorPixel(middleX + (dx * factor * unit), middleY + (dy * factor * unit));
    }

    /// <summary>The place that the lens moves to a pixel; null when there is none within <see cref="Reach"/>.</summary>
    public ProjectorPixel? Straighten(ProjectorPixel pixel, PictureSize picture)
    {
        var (middleX, middleY, unit) = (picture.Width / 2.0, picture.Height / 2.0, picture.HalfDiagonal);
        var (dx, dy) = ((pixel.X - middleX) / unit, (pixel.Y - middleY) / unit);
        var bent = Math.Sqrt((dx * dx) + (dy * dy));
        if (bent == 0)
        {
            return pixel;
        }

        return Straightened(bent) is { } straight
            ? new ProjectorPixel(middleX + (dx * straight / bent * unit), middleY + (dy * straight / bent * unit))
            : null;
    }

    /// <summary>How the moved pixel changes with the pixel: the four slopes, in the order dX/dx, dX/dy, dY/dx, dY/dy.</summary>
    internal (double Xx, double Xy, double Yx, double Yy) Slopes(double x, double y, PictureSize picture)
    {
        var unit = picture.HalfDiagonal;
        var (dx, dy) = ((x - (picture.Width / 2.0)) / unit, (y - (picture.Height / 2.0)) / unit);
        var r2 = (dx * dx) + (dy * dy);
        var factor = 1 + (K1 * r2) + (K2 * r2 * r2);
        var slope = (2 * K1) + (4 * K2 * r2);
        return (factor + (slope * dx * dx), slope * dx * dy, slope * dx * dy, factor + (slope * dy * dy));
    }
}
