namespace AimTrainer.Domain;

/// <summary>The speed of the ball, in miles per hour. Where it was measured is said beside it (<see cref="BallSpeed"/>).</summary>
/// <remarks>
/// Kept in miles per hour. Range <see cref="Minimum"/> to <see cref="Maximum"/> inclusive. The default value is 0 miles per hour.
/// </remarks>
public readonly record struct MilesPerHour : IComparable<MilesPerHour>
{
    /// <summary>Lowest value, in miles per hour.</summary>
    public const double Minimum = 0;

    /// <summary>Highest value, in miles per hour.</summary>
    public const double Maximum = 100;

    private readonly double _milesPerHour;

    private MilesPerHour(double milesPerHour) => _milesPerHour = milesPerHour;

    /// <summary>This value in miles per hour.</summary>
    public double Value => _milesPerHour;

    /// <summary>A value in miles per hour.</summary>
    /// <param name="milesPerHour">Miles per hour, <see cref="Minimum"/> to <see cref="Maximum"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public static MilesPerHour FromMilesPerHour(double milesPerHour) => new(FixedPoint.InRange(milesPerHour, Minimum, Maximum, nameof(milesPerHour)));

    /// <summary>A measured value, rounded once, on arrival, to 0.01 mph (ties to even).</summary>
    /// <param name="milesPerHour">Miles per hour, <see cref="Minimum"/> to <see cref="Maximum"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public static MilesPerHour FromMeasurement(double milesPerHour) =>
        new(FixedPoint.Rounded(FixedPoint.InRange(milesPerHour, Minimum, Maximum, nameof(milesPerHour)), 2));

    /// <summary>How far two values lie apart, exact to the decimal digits of both, so that a limit is met exactly or not at all.</summary>
    /// <param name="other">The other value.</param>
    /// <returns>A distance of 0 or more, in miles per hour.</returns>
    public decimal ApartFrom(MilesPerHour other) => Math.Abs((decimal)_milesPerHour - (decimal)other._milesPerHour);

    /// <inheritdoc/>
    public int CompareTo(MilesPerHour other) => _milesPerHour.CompareTo(other._milesPerHour);

    /// <summary>Whether the left value is the lower.</summary>
    public static bool operator <(MilesPerHour left, MilesPerHour right) => left._milesPerHour < right._milesPerHour;

    /// <summary>Whether the left value is the higher.</summary>
    public static bool operator >(MilesPerHour left, MilesPerHour right) => left._milesPerHour > right._milesPerHour;

    /// <summary>Whether the left value is the lower, or the same.</summary>
    public static bool operator <=(MilesPerHour left, MilesPerHour right) => left._milesPerHour <= right._milesPerHour;

    /// <summary>Whether the left value is the higher, or the same.</summary>
    public static bool operator >=(MilesPerHour left, MilesPerHour right) => left._milesPerHour >= right._milesPerHour;

    /// <inheritdoc/>
    public override string ToString() => FixedPoint.Text(_milesPerHour);
}
