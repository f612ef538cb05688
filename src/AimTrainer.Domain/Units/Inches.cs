namespace AimTrainer.Domain;

/// <summary>A distance across the lane, in inches; from the right edge where it is a place.</summary>
/// <remarks>
/// Kept in inches. Range <see cref="Minimum"/> to <see cref="Maximum"/> inclusive. The default value is 0 inches.
/// </remarks>
public readonly record struct Inches : IComparable<Inches>
{
    /// <summary>Lowest value, in inches.</summary>
    public const double Minimum = -10_000;

    /// <summary>Highest value, in inches.</summary>
    public const double Maximum = 10_000;

    private readonly double _inches;

    private Inches(double inches) => _inches = inches;

    /// <summary>This value in inches.</summary>
    public double Value => _inches;

    /// <summary>A value in inches.</summary>
    /// <param name="inches">Inches, <see cref="Minimum"/> to <see cref="Maximum"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public static Inches FromInches(double inches) => new(FixedPoint.InRange(inches, Minimum, Maximum, nameof(inches)));

    /// <summary>A measured value, rounded once, on arrival, to 0.001 in (ties to even).</summary>
    /// <param name="inches">Inches, <see cref="Minimum"/> to <see cref="Maximum"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public static Inches FromMeasurement(double inches) =>
        new(FixedPoint.Rounded(FixedPoint.InRange(inches, Minimum, Maximum, nameof(inches)), 3));

    /// <inheritdoc/>
    public int CompareTo(Inches other) => _inches.CompareTo(other._inches);

    /// <summary>Whether the left value is the lower.</summary>
    public static bool operator <(Inches left, Inches right) => left._inches < right._inches;

    /// <summary>Whether the left value is the higher.</summary>
    public static bool operator >(Inches left, Inches right) => left._inches > right._inches;

    /// <summary>Whether the left value is the lower, or the same.</summary>
    public static bool operator <=(Inches left, Inches right) => left._inches <= right._inches;

    /// <summary>Whether the left value is the higher, or the same.</summary>
    public static bool operator >=(Inches left, Inches right) => left._inches >= right._inches;

    /// <inheritdoc/>
    public override string ToString() => FixedPoint.Text(_inches);
}
