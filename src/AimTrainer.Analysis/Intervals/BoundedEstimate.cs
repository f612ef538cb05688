using System.Text.Json.Serialization;

namespace AimTrainer.Analysis;

/// <summary>A figure with the limits between which the truth plausibly lies. What cannot be known is null, and <see cref="Why"/> says why.</summary>
/// <param name="Value">The figure; null when there are too few shots for any.</param>
/// <param name="Low">Lower limit, 95 % unless said otherwise; null when no limits can be given.</param>
/// <param name="High">Upper limit; null when no limits can be given.</param>
/// <param name="Why">Why something is null, and from how many shots on it is known; null when nothing is.</param>
public sealed record BoundedEstimate(double? Value, double? Low, double? High, string? Why)
{
    /// <summary>How sure limits are unless another confidence is asked for.</summary>
    public const double UsualConfidence = 0.95;

    /// <summary>Whether the limits leave out 0: the figure is told from nothing at all.</summary>
    [JsonIgnore]
    public bool? DiffersFromZero => Low is { } low && High is { } high ? low > 0 || high < 0 : null;

    /// <summary>A figure that is not known.</summary>
    /// <param name="why">Why, and what would make it known.</param>
    public static BoundedEstimate Unknown(string why) => new(null, null, null, why);

    /// <summary>A figure without limits.</summary>
    /// <param name="value">The figure.</param>
    /// <param name="why">Why there are none.</param>
    public static BoundedEstimate Bare(double value, string why) => new(value, null, null, why);

    /// <summary>A figure between its limits.</summary>
    public static BoundedEstimate Between(double value, double low, double high) => new(value, low, high, null);

    /// <summary>The same figure in another unit.</summary>
    /// <param name="factor">What one old unit is in the new one; a negative factor changes the sides of the limits.</param>
    public BoundedEstimate Times(double factor) => factor < 0
        ? new(Value * factor, High * factor, Low * factor, Why)
        : new(Value * factor, Low * factor, High * factor, Why);
}
