namespace AimTrainer.Domain;

/// <summary>The rev rate of the ball, in revolutions per minute.</summary>
/// <remarks>
/// Kept in revolutions per minute. Range <see cref="Minimum"/> to <see cref="Maximum"/> inclusive. The default value is 0 revolutions per minute.
/// </remarks>
public readonly record struct Rpm : IComparable<Rpm>
{
    /// <summary>Lowest value, in revolutions per minute.</summary>
    public const double Minimum = 0;

    /// <summary>Highest value, in revolutions per minute.</summary>
    public const double Maximum = 2_000;

    private readonly double _rpm;

    private Rpm(double rpm) => _rpm = rpm;

    /// <summary>This value in revolutions per minute.</summary>
    public double Value => _rpm;

    /// <summary>A value in revolutions per minute.</summary>
    /// <param name="rpm">Revolutions per minute, <see cref="Minimum"/> to <see cref="Maximum"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public static Rpm FromRpm(double rpm) => new(FixedPoint.InRange(rpm, Minimum, Maximum, nameof(rpm)));

    /// <summary>A measured value, rounded once, on arrival, to 0.1 rpm (ties to even).</summary>
    /// <param name="rpm">Revolutions per minute, <see cref="Minimum"/> to <see cref="Maximum"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public static Rpm FromMeasurement(double rpm) =>
        new(FixedPoint.Rounded(FixedPoint.InRange(rpm, Minimum, Maximum, nameof(rpm)), 1));

    /// <summary>How far two values lie apart, exact to the decimal digits of both, so that a limit is met exactly or not at all.</summary>
    /// <param name="other">The other value.</param>
    /// <returns>A distance of 0 or more, in revolutions per minute.</returns>
    public decimal ApartFrom(Rpm other) => Math.Abs((decimal)_rpm - (decimal)other._rpm);

    /// <inheritdoc/>
    public int CompareTo(Rpm other) => _rpm.CompareTo(other._rpm);

    /// <summary>Whether the left value is the lower.</summary>
    public static bool operator <(Rpm left, Rpm right) => left._rpm < right._rpm;

    /// <summary>Whether the left value is the higher.</summary>
    public static bool operator >(Rpm left, Rpm right) => left._rpm > right._rpm;

    /// <summary>Whether the left value is the lower, or the same.</summary>
    public static bool operator <=(Rpm left, Rpm right) => left._rpm <= right._rpm;

    /// <summary>Whether the left value is the higher, or the same.</summary>
    public static bool operator >=(Rpm left, Rpm right) => left._rpm >= right._rpm;

    /// <inheritdoc/>
    public override string ToString() => FixedPoint.Text(_rpm);
}
