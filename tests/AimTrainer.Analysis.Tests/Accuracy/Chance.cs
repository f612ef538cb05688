using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

/// <summary>Seeded random numbers, one after the other.</summary>
internal sealed class Chance(ulong seed)
{
    private ulong _position;

    public double Unit() => SeededRandom.Unit(seed, _position++);

    public double Uniform(double low, double high) => low + ((high - low) * Unit());

    /// <summary>Source: Box, Muller, Annals of Mathematical Statistics 29, 1958.</summary>
    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - Unit())) * Math.Cos(2 * Math.PI * Unit());
}
