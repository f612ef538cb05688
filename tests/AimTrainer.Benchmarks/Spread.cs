using System.Globalization;

namespace AimTrainer.Benchmarks;

/// <summary>Repeated measurements of one thing.</summary>
internal sealed class Spread(IEnumerable<double> values)
{
    private readonly double[] _sorted = [.. values.Order()];

    public double Median => At(0.5);

    /// <summary>The smallest value that at least this share of all reach or stay below.</summary>
    public double At(double share) => _sorted[Math.Clamp((int)Math.Ceiling(share * _sorted.Length) - 1, 0, _sorted.Length - 1)];

    /// <summary>"2.31 (2.20 to 2.45)": the median, the least and the most.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Median:0.00} ({_sorted[0]:0.00} to {_sorted[^1]:0.00})");
}
