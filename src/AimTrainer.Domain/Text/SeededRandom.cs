namespace AimTrainer.Domain;

/// <summary>
/// A small seeded generator (SplitMix64) that gives the same numbers on every runtime. Pure: a number is a function of seed and
/// position, so that a state need not carry a generator.
/// </summary>
public static class SeededRandom
{
    /// <summary>64 well-mixed bits for a position in the stream of a seed.</summary>
    public static ulong Bits(ulong seed, ulong position)
    {
        // Source: Steele, Lea, Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014 (SplitMix64 finaliser).
        var z = unchecked(seed + ((position + 1) * 0x9E3779B97F4A7C15UL));
        z = unchecked((z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL);
        z = unchecked((z ^ (z >> 27)) * 0x94D049BB133111EBUL);
        return z ^ (z >> 31);
    }

    /// <summary>A number from 0 (inclusive) to 1 (exclusive).</summary>
    public static double Unit(ulong seed, ulong position) => (Bits(seed, position) >> 11) * (1.0 / (1UL << 53));

    /// <summary>A whole number from 0 to <paramref name="count"/> - 1.</summary>
    public static int Index(ulong seed, ulong position, int count) => (int)(Unit(seed, position) * count);
}
