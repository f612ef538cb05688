namespace AimTrainer.Calibration;

/// <summary>
/// A projective map of the plane, the 3x3 matrix of homogeneous coordinates by rows: (x, y, 1) goes to (x', y', w') and the point is
/// (x'/w', y'/w'). Here from lane inches (across from the right edge, down from the foul line) to pixels.
/// </summary>
public readonly record struct Homography(
    double M11, double M12, double M13,
    double M21, double M22, double M23,
    double M31, double M32, double M33)
{
    /// <summary>Where a point goes; infinite or not a number on the horizon of the map.</summary>
    public (double X, double Y) Apply(double x, double y)
    {
        var w = (M31 * x) + (M32 * y) + M33;
        return (((M11 * x) + (M12 * y) + M13) / w, ((M21 * x) + (M22 * y) + M23) / w);
    }
}
