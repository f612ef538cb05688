using AimTrainer.Domain;

namespace AimTrainer.Calibration.Tests;

/// <summary>A seeded stream of numbers: the same seed gives the same cases on every runtime.</summary>
internal sealed class Chance(ulong seed)
{
    private ulong _position;

    public double Unit() => SeededRandom.Unit(seed, _position++);

    public double Between(double low, double high) => low + ((high - low) * Unit());

    public int Index(int count) => (int)(Unit() * count);

    /// <summary>A normal deviate by the method of Box and Muller.</summary>
    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - Unit())) * Math.Cos(2 * Math.PI * Unit());
}
