namespace AimTrainer.Display;

/// <summary>The side of a straight line where A x + B y + C is 0 or more.</summary>
internal readonly record struct HalfPlane(double A, double B, double C)
{
    /// <summary>How far inside a point is, in no unit of its own; negative outside.</summary>
    public double At(XY point) => (A * point.X) + (B * point.Y) + C;
}
