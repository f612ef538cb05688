namespace AimTrainer.Domain;

/// <summary>An angle, in degrees. A launch angle is positive outward (toward the bowler's own gutter); an entry angle is positive into the pocket.</summary>
/// <remarks>
/// Kept in degrees. Range <see cref="Minimum"/> to <see cref="Maximum"/> inclusive. The default value is 0 degrees.
/// </remarks>
public readonly record struct Degrees : IComparable<Degrees>
{
    /// <summary>Lowest value, in degrees.</summary>
    public const double Minimum = -360;

    /// <summary>Highest value, in degrees.</summary>
    public const double Maximum = 360;

    private readonly double _degrees;

    private Degrees(double degrees) => _degrees = degrees;

    /// <summary>This value in degrees.</summary>
    public double Value => _degrees;

    /// <summary>A value in degrees.</summary>
    /// <param name="degrees">Degrees, <see cref="Minimum"/> to <see cref="Maximum"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public static Degrees FromDegrees(double degrees) => new(FixedPoint.InRange(degrees, Minimum, Maximum, nameof(degrees)));

    /// <summary>A measured value, rounded once, on arrival, to 0.001 degree (ties to even).</summary>
    /// <param name="degrees">Degrees, <see cref="Minimum"/> to <see cref="Maximum"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public static Degrees FromMeasurement(double degrees) =>
        new(FixedPoint.Rounded(FixedPoint.InRange(degrees, Minimum, Maximum, nameof(degrees)), 3));

    /// <summary>How far two values lie apart, exact to the decimal digits of both, so that a limit is met exactly or not at all.</summary>
    /// <param name="other">The other value.</param>
    /// <returns>A distance of 0 or more, in degrees.</returns>
    public decimal ApartFrom(Degrees other) => Math.Abs((decimal)_degrees - (decimal)other._degrees);

    /// <inheritdoc/>
    public int CompareTo(Degrees other) => _degrees.CompareTo(other._degrees);

    /// <summary>Whether the left value is the lower.</summary>
    public static bool operator <(Degrees left, Degrees right) => left._degrees < right._degrees;

    /// <summary>Whether the left value is the higher.</summary>
    public static bool operator >(Degrees left, Degrees right) => left._degrees > right._degrees;

    /// <summary>Whether the left value is the lower, or the same.</summary>
    public static bool operator <=(Degrees left, Degrees right) => left._degrees <= right._degrees;

    /// <summary>Whether the left value is the higher, or the same.</summary>
    public static bool operator >=(Degrees left, Degrees right) => left._degrees >= right._degrees;

    /// <inheritdoc/>
    public override string ToString() => FixedPoint.Text(_degrees);
}
