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
    /// <summary>The determinant. With the third coordinate positive its sign tells whether the map keeps the sense of turning.</summary>
    public double Determinant =>
        (M11 * ((M22 * M33) - (M23 * M32))) - (M12 * ((M21 * M33) - (M23 * M31))) + (M13 * ((M21 * M32) - (M22 * M31)));

    /// <summary>Where a point goes; infinite or not a number on the horizon of the map.</summary>
    public (double X, double Y) Apply(double x, double y)
    {
        var w = (M31 * x) + (M32 * y) + M33;
        return (((M11 * x) + (M12 * y) + M13) / w, ((M21 * x) + (M22 * y) + M23) / w);
    }

    /// <summary>The third homogeneous coordinate of a point: 0 on the horizon of the map, of one sign on each side of it.</summary>
    public double Third(double x, double y) => (M31 * x) + (M32 * y) + M33;

    /// <summary>The first map after this one.</summary>
    public Homography Then(Homography next) => new(
        (next.M11 * M11) + (next.M12 * M21) + (next.M13 * M31), (next.M11 * M12) + (next.M12 * M22) + (next.M13 * M32), (next.M11 * M13) + (next.M12 * M23) + (next.M13 * M33),
        (next.M21 * M11) + (next.M22 * M21) + (next.M23 * M31), (next.M21 * M12) + (next.M22 * M22) + (next.M23 * M32), (next.M21 * M13) + (next.M22 * M23) + (next.M23 * M33),
        (next.M31 * M11) + (next.M32 * M21) + (next.M33 * M31), (next.M31 * M12) + (next.M32 * M22) + (next.M33 * M32), (next.M31 * M13) + (next.M32 * M23) + (next.M33 * M33));

    /// <summary>The way back, up to scale; meaningless when the determinant is 0.</summary>
    public Homography Inverted() => new(
        (M22 * M33) - (M23 * M32), (M13 * M32) - (M12 * M33), (M12 * M23) - (M13 * M22),
        (M23 * M31) - (M21 * M33), (M11 * M33) - (M13 * M31), (M13 * M21) - (M11 * M23),
        (M21 * M32) - (M22 * M31), (M12 * M31) - (M11 * M32), (M11 * M22) - (M12 * M21));

    /// <summary>The same map with every number of the matrix multiplied: by a negative factor the third coordinate changes its sign.</summary>
    public Homography Times(double factor) => new(
        M11 * factor, M12 * factor, M13 * factor, M21 * factor, M22 * factor, M23 * factor, M31 * factor, M32 * factor, M33 * factor);
}
