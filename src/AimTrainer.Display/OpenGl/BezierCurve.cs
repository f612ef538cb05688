namespace AimTrainer.Display;

/// <summary>A cubic Bézier curve.</summary>
internal readonly record struct BezierCurve(XY P0, XY P1, XY P2, XY P3) : ICurve
{
    public XY At(double part)
    {
        var rest = 1 - part;
        return (P0 * (rest * rest * rest)) + (P1 * (3 * rest * rest * part)) + (P2 * (3 * rest * part * part)) + (P3 * (part * part * part));
    }
}
