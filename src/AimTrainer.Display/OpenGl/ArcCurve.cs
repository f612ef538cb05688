namespace AimTrainer.Display;

/// <summary>A piece of an ellipse with its axes along the plane's.</summary>
/// <param name="Centre">Its middle.</param>
/// <param name="Radii">Half its size along each axis.</param>
/// <param name="From">Where it starts, in radians.</param>
/// <param name="Turn">How far it goes, in radians; negative the other way.</param>
internal readonly record struct ArcCurve(XY Centre, XY Radii, double From, double Turn) : ICurve
{
    public XY At(double part)
    {
        var (sine, cosine) = Math.SinCos(From + (Turn * part));
        return new XY(Centre.X + (Radii.X * cosine), Centre.Y + (Radii.Y * sine));
    }
}
