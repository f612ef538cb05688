namespace AimTrainer.Calibration;

/// <summary>
/// What is made as small as can be: the distances in the picture between where a map puts each mark and where it was placed. The
/// unknowns are the first eight numbers of the matrix between normalised points, the ninth being 1, and the terms of distortion. That
/// the ninth can be 1 follows from the marks: their middle is the origin, and it lies before the horizon when they all do.
/// </summary>
internal sealed class Reprojection
{
    private readonly MarkArrays _marks;
    private readonly PictureSize _picture;
    private readonly Normalisation _lane, _pixels;

    public Reprojection(MarkArrays marks, PictureSize picture, int terms)
        : this(marks, picture, terms, Normalisation.Of(marks.Across, marks.Down), Normalisation.Of(marks.X, marks.Y))
    {
    }

    private Reprojection(MarkArrays marks, PictureSize picture, int terms, Normalisation lane, Normalisation pixels)
    {
        (_marks, _picture, Terms, _lane, _pixels) = (marks, picture, terms, lane, pixels);
    }

    public int Terms { get; }

    public int Unknowns => 8 + Terms;

    public int Equations => 2 * _marks.Count;

    /// <summary>The same with one mark left out, in the same unknowns.</summary>
    public Reprojection Without(int mark) => new(_marks.Without(mark), _picture, Terms, _lane, _pixels);

    /// <summary>Where to start by the linear equations. Null when the straightened marks have no map that keeps them all before its horizon.</summary>
    /// <param name="lens">The distortion to start from.</param>
    public MapStart? Start(LensDistortion lens)
    {
        var count = _marks.Count;
        var (x, y, toX, toY) = (new double[count], new double[count], new double[count], new double[count]);
        for (var i = 0; i < count; i++)
        {
            if (lens.Straighten(new ProjectorPixel(_marks.X[i], _marks.Y[i]), _picture) is not { } straight)
            {
                return null;
            }

            (x[i], y[i]) = (_lane.X(_marks.Across[i]), _lane.Y(_marks.Down[i]));
            (toX[i], toY[i]) = (_pixels.X(straight.X), _pixels.Y(straight.Y));
        }

        var (h, condition) = DirectLinear.Solve(x, y, toX, toY);
        var s = 1 / h.M33;
        double[] unknowns = [h.M11 * s, h.M12 * s, h.M13 * s, h.M21 * s, h.M22 * s, h.M23 * s, h.M31 * s, h.M32 * s, .. Lens(lens)];
        var errors = new double[Equations];
        return double.IsFinite(s) && Evaluate(unknowns, errors, []) ? new MapStart(unknowns, errors.Sum(error => error * error), condition) : null;
    }

    /// <summary>Where to start when the linear equations lead nowhere: the map without perspective that fits best.</summary>
    public double[] FlatStart()
    {
        // The normalised coordinates have no mean, so the least squares of each row need a 2x2 system only.
        var (xx, xy, yy, xu, yu, xv, yv) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
        for (var i = 0; i < _marks.Count; i++)
        {
            var (x, y) = (_lane.X(_marks.Across[i]), _lane.Y(_marks.Down[i]));
            var (u, v) = (_pixels.X(_marks.X[i]), _pixels.Y(_marks.Y[i]));
            (xx, xy, yy) = (xx + (x * x), xy + (x * y), yy + (y * y));
            (xu, yu, xv, yv) = (xu + (x * u), yu + (y * u), xv + (x * v), yv + (y * v));
        }

        var determinant = (xx * yy) - (xy * xy);
        return
        [
            ((yy * xu) - (xy * yu)) / determinant, ((xx * yu) - (xy * xu)) / determinant, 0,
            ((yy * xv) - (xy * yv)) / determinant, ((xx * yv) - (xy * xv)) / determinant, 0, 0, 0, .. Lens(default),
        ];
    }

    /// <summary>The errors, and how they change with the unknowns.</summary>
    /// <param name="unknowns">Where.</param>
    /// <param name="errors">Takes two for each mark, x and y, in pixels.</param>
    /// <param name="slopes">Takes a row for each error; empty when not wanted.</param>
    /// <returns>Whether all marks lie before the horizon; when not, the errors mean nothing.</returns>
    public bool Evaluate(ReadOnlySpan<double> unknowns, Span<double> errors, Span<double> slopes)
    {
        for (var i = 0; i < _marks.Count; i++)
        {
            var rows = slopes.IsEmpty ? slopes : slopes.Slice(2 * i * Unknowns, 2 * Unknowns);
            if (Pixel(unknowns, _marks.Across[i], _marks.Down[i], rows) is not { } pixel)
            {
                return false;
            }

            (errors[2 * i], errors[(2 * i) + 1]) = (pixel.X - _marks.X[i], pixel.Y - _marks.Y[i]);
        }

        return true;
    }

    /// <summary>Where the map puts a point of the lane, and how that changes with the unknowns.</summary>
    /// <param name="p">The unknowns.</param>
    /// <param name="across">Inches from the right edge.</param>
    /// <param name="down">Inches past the foul line.</param>
    /// <param name="rows">Takes the slopes of x, then those of y; empty when not wanted.</param>
    /// <returns>Null when the point is not before the horizon.</returns>
    public ProjectorPixel? Pixel(ReadOnlySpan<double> p, double across, double down, Span<double> rows)
    {
        const double LeastDepth = 1e-6;
        var (u, v) = (_lane.X(across), _lane.Y(down));
        var w = (p[6] * u) + (p[7] * v) + 1;
        if (!(w > LeastDepth))
        {
            return null;
        }

        var (nx, ny) = (((p[0] * u) + (p[1] * v) + p[2]) / w, ((p[3] * u) + (p[4] * v) + p[5]) / w);
        var (x, y) = ((nx * _pixels.SpreadX) + _pixels.MiddleX, (ny * _pixels.SpreadY) + _pixels.MiddleY);
        var lens = LensOf(p);
        if (!rows.IsEmpty)
        {
            var bend = lens.Slopes(x, y, _picture);
            Slopes(rows[..Unknowns], bend.Xx * _pixels.SpreadX / w, bend.Xy * _pixels.SpreadY / w, u, v, nx, ny);
            Slopes(rows[Unknowns..], bend.Yx * _pixels.SpreadX / w, bend.Yy * _pixels.SpreadY / w, u, v, nx, ny);
            LensSlopes(rows, x, y);
        }

        return lens.Bend(x, y, _picture);
    }

    /// <summary>The matrix between lane inches and pixels, with its third coordinate positive at all marks, and the lens.</summary>
    public (Homography Matrix, LensDistortion Lens) MapOf(ReadOnlySpan<double> p)
    {
        var normalised = new Homography(p[0], p[1], p[2], p[3], p[4], p[5], p[6], p[7], 1);
        var matrix = _lane.There.Then(normalised).Then(_pixels.Back);

        // The usual scale has 1 in the last place. That place is 0 where the horizon passes the corner of the foul line; the scale is then left.
        var last = Math.Abs(matrix.M33);
        return (last > 1e-6 ? matrix.Times(1 / last) : matrix, LensOf(p));
    }

    private LensDistortion LensOf(ReadOnlySpan<double> p) => new(Terms > 0 ? p[8] : 0, Terms > 1 ? p[9] : 0);

    private double[] Lens(LensDistortion lens) => Terms switch { 0 => [], 1 => [lens.K1], _ => [lens.K1, lens.K2] };

    private static void Slopes(Span<double> row, double bx, double by, double u, double v, double nx, double ny)
    {
        (row[0], row[1], row[2]) = (bx * u, bx * v, bx);
        (row[3], row[4], row[5]) = (by * u, by * v, by);
        var through = -((bx * nx) + (by * ny));
        (row[6], row[7]) = (through * u, through * v);
    }

    private void LensSlopes(Span<double> rows, double x, double y)
    {
        var unit = _picture.HalfDiagonal;
        var (dx, dy) = (x - (_picture.Width / 2.0), y - (_picture.Height / 2.0));
        var r2 = ((dx * dx) + (dy * dy)) / (unit * unit);
        var power = r2;
        for (var term = 0; term < Terms; term++, power *= r2)
        {
            (rows[8 + term], rows[Unknowns + 8 + term]) = (dx * power, dy * power);
        }
    }
}
