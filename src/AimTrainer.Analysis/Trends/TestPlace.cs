using System.Globalization;

namespace AimTrainer.Analysis;

/// <summary>
/// Where on the lane a test measures. Spread grows with distance, so only tests at one place make a series: all targets at the arrows
/// (12 to 16 ft) together, others by the whole foot.
/// </summary>
/// <param name="Feet">The distance in whole feet; null at the arrows.</param>
public readonly record struct TestPlace(int? Feet)
{
    private const double NearestArrow = 12;
    private const double FarthestArrow = 16;

    /// <summary>The place of a target.</summary>
    public static TestPlace Of(double distanceFeet) =>
        new(distanceFeet is >= NearestArrow and <= FarthestArrow ? null : (int)Math.Round(distanceFeet, MidpointRounding.ToEven));

    /// <summary>"at the arrows", "at 40 ft".</summary>
    public override string ToString() => Feet is { } feet ? string.Create(CultureInfo.InvariantCulture, $"at {feet} ft") : "at the arrows";
}
