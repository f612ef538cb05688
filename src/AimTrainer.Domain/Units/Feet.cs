namespace AimTrainer.Domain;

/// <summary>A distance along the lane, in feet from the approach side of the foul line; positive is downlane.</summary>
/// <remarks>
/// Kept in feet. Range <see cref="Minimum"/> to <see cref="Maximum"/> inclusive. The default value is 0 feet.
/// </remarks>
public readonly record struct Feet : IComparable<Feet>
{
    /// <summary>Lowest value, in feet.</summary>
    public const double Minimum = -30;

    /// <summary>Highest value, in feet.</summary>
    public const double Maximum = 100;

    private readonly double _feet;

    private Feet(double feet) => _feet = feet;

    /// <summary>This value in feet.</summary>
    public double Value => _feet;

    /// <summary>A value in feet.</summary>
    /// <param name="feet">Feet past the foul line (negative: on the approach), <see cref="Minimum"/> to <see cref="Maximum"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public static Feet FromFeet(double feet) => new(FixedPoint.InRange(feet, Minimum, Maximum, nameof(feet)));

    /// <summary>A measured value, rounded once, on arrival, to 0.001 ft (ties to even).</summary>
    /// <param name="feet">Feet past the foul line (negative: on the approach), <see cref="Minimum"/> to <see cref="Maximum"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public static Feet FromMeasurement(double feet) =>
        new(FixedPoint.Rounded(FixedPoint.InRange(feet, Minimum, Maximum, nameof(feet)), 3));

    /// <summary>How far two values lie apart, exact to the decimal digits of both, so that a limit is met exactly or not at all.</summary>
    /// <param name="other">The other value.</param>
    /// <returns>A distance of 0 or more, in feet.</returns>
    public decimal ApartFrom(Feet other) => Math.Abs((decimal)_feet - (decimal)other._feet);

    /// <inheritdoc/>
    public int CompareTo(Feet other) => _feet.CompareTo(other._feet);

    /// <summary>Whether the left value is the lower.</summary>
    public static bool operator <(Feet left, Feet right) => left._feet < right._feet;

    /// <summary>Whether the left value is the higher.</summary>
    public static bool operator >(Feet left, Feet right) => left._feet > right._feet;

    /// <summary>Whether the left value is the lower, or the same.</summary>
    public static bool operator <=(Feet left, Feet right) => left._feet <= right._feet;

    /// <summary>Whether the left value is the higher, or the same.</summary>
    public static bool operator >=(Feet left, Feet right) => left._feet >= right._feet;

    /// <inheritdoc/>
    public override string ToString() => FixedPoint.Text(_feet);
}
