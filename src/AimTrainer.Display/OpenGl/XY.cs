namespace AimTrainer.Display;

/// <summary>
/// Two numbers of a plane, for the number-crunching of this folder: lane inches or picture heights before the projection, pixels after it
/// (origin at the outer corner of the top left pixel, y down).
/// </summary>
internal readonly record struct XY(double X, double Y)
{
    public static XY operator +(XY left, XY right) => new(left.X + right.X, left.Y + right.Y);

    public static XY operator -(XY left, XY right) => new(left.X - right.X, left.Y - right.Y);

    public static XY operator *(XY left, double factor) => new(left.X * factor, left.Y * factor);

    public double Length => Math.Sqrt((X * X) + (Y * Y));

    public bool IsFinite => double.IsFinite(X) && double.IsFinite(Y);

    /// <summary>The point this part of the way to another.</summary>
    public XY Towards(XY other, double part) => new(X + ((other.X - X) * part), Y + ((other.Y - Y) * part));
}
