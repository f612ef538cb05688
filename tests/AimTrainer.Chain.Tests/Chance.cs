using AimTrainer.Domain;

namespace AimTrainer.Chain.Tests;

/// <summary>Chance that is the same for the same seed, drawn from any thread.</summary>
internal sealed class Chance(ulong seed)
{
    private long _drawn;

    /// <summary>0 to less than 1.</summary>
    public double Next() => SeededRandom.Unit(seed, (ulong)Interlocked.Increment(ref _drawn));

    /// <summary>0 to less than <paramref name="count"/>.</summary>
    public int Index(int count) => (int)(Next() * count);
}
