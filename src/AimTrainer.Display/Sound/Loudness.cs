using System.Globalization;

namespace AimTrainer.Display;

/// <summary>How loud the cues are, in percent: 100 is as made, 0 is silent; the ear hears half of it at about half.</summary>
public readonly record struct Loudness
{
    private Loudness(double percent) => Percent = percent;

    /// <summary>0 to 100.</summary>
    public double Percent { get; }

    /// <summary>The factor on every sample, 0 to 1: the square of the share, 12 dB down at one half.</summary>
    public float Gain => (float)(Percent / 100 * (Percent / 100));

    /// <summary>As made.</summary>
    public static Loudness Full { get; } = new(100);

    /// <summary>A loudness.</summary>
    /// <param name="percent">0 to 100 inclusive.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public static Loudness FromPercent(double percent) =>
        percent is >= 0 and <= 100 ? new Loudness(percent) : throw new ArgumentOutOfRangeException(nameof(percent), percent, "0 to 100 is allowed");

    /// <inheritdoc/>
    public override string ToString() => Percent.ToString(CultureInfo.InvariantCulture) + " %";
}
