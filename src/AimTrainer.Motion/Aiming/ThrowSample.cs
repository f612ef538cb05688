using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>
/// Throws drawn once and used for every line, scatter and lane: what is compared then differs by what is compared, and not by luck
/// (common random numbers).
/// </summary>
internal sealed class ThrowSample
{
    private readonly double[] _normal;

    public ThrowSample(int count, ulong seed)
    {
        Count = count;
        _normal = new double[count * Scatter.Parts];
        for (var i = 0; i < _normal.Length; i++)
        {
            _normal[i] = Normal(seed, (ulong)i);
        }
    }

    public int Count { get; }

    /// <summary>A standard normal number for a position in the stream of a seed.</summary>
    public static double Normal(ulong seed, ulong position) =>
        StandardNormal.Quantile((SeededRandom.Bits(seed, position) >> 11) * (1.0 / (1UL << 53)) + (0.5 / (1UL << 53)));

    /// <summary>One of the throws at a line; null when no path can be worked out for it, which is a miss.</summary>
    public Release? At(int which, AimBowler bowler, Scatter scatter, AimLine line)
    {
        var (boards, degrees, mph, rpm) = scatter.Off(_normal.AsSpan(which * Scatter.Parts, Scatter.Parts));
        var meant = bowler.Meant(line);
        var thrown = meant with
        {
            LaydownBoard = meant.LaydownBoard + boards,
            LaunchAngleDegrees = meant.LaunchAngleDegrees + degrees,
            SpeedMetresPerSecond = meant.SpeedMetresPerSecond + (mph * Release.MetresPerSecondPerMph),
            RevsRpm = Math.Max(0, meant.RevsRpm + rpm),
        };
        return thrown.Problem() is null ? thrown : null;
    }
}
