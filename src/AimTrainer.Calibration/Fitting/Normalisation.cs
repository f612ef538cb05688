namespace AimTrainer.Calibration;

/// <summary>
/// Moves and scales points so that their middle is 0 and their spread along each axis is 1. Without it the linear equations mix
/// numbers of very different size and lose their digits. A lane is long and narrow, so each axis has a scale of its own.
/// </summary>
/// <remarks>Source: Hartley and Zisserman, Multiple View Geometry in Computer Vision, section 4.4 (from memory).</remarks>
internal readonly record struct Normalisation(double MiddleX, double MiddleY, double SpreadX, double SpreadY)
{
    public static Normalisation Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var (middleX, middleY) = (Mean(x), Mean(y));
        return new Normalisation(middleX, middleY, Spread(x, middleX), Spread(y, middleY));
    }

    public double X(double x) => (x - MiddleX) / SpreadX;

    public double Y(double y) => (y - MiddleY) / SpreadY;

    /// <summary>To the normalised points.</summary>
    public Homography There => new(1 / SpreadX, 0, -MiddleX / SpreadX, 0, 1 / SpreadY, -MiddleY / SpreadY, 0, 0, 1);

    /// <summary>Back from them.</summary>
    public Homography Back => new(SpreadX, 0, MiddleX, 0, SpreadY, MiddleY, 0, 0, 1);

    private static double Mean(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value;
        }

        return sum / values.Length;
    }

    private static double Spread(ReadOnlySpan<double> values, double middle)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += (value - middle) * (value - middle);
        }

        // Marks in one row have no spread along it; they are refused for that, not divided by nothing.
        return sum > 0 ? Math.Sqrt(sum / values.Length) : 1;
    }
}
