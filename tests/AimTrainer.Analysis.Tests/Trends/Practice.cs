using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

/// <summary>Invented practice for tests.</summary>
internal static class Practice
{
    public static DateTimeOffset Start { get; } = new(2026, 1, 5, 18, 0, 0, TimeSpan.Zero);

    /// <summary>What the misses of one run at one target add up to.</summary>
    public static PracticeBlock Block(
        int day, int run, BlockKind? kind, double feet, double[] misses, string? session = null, string target = "target", string? ball = null, double hours = 0)
    {
        var whole = misses.Count(miss => Math.Round(miss) == miss);
        return new PracticeBlock(
            session ?? $"s{day}", Start.AddDays(day).AddHours(hours), run, "block", kind, ball, target, feet, misses.Length, misses.Length, 0,
            misses.Sum(), misses.Sum(Math.Abs), misses.Sum(miss => miss * miss), misses.Length > 0 ? 10 + misses.Min() : null,
            misses.Length > 0 ? 10 + misses.Max() : null, whole);
    }

    /// <summary>A test block a week at each distance, by a bowler who never changes.</summary>
    public static IEnumerable<PracticeBlock> Unchanging(ulong bowler, int sessions, int shots, params double[] feet)
    {
        var noise = new Normal(bowler + 1_000_000);
        return [.. from session in Enumerable.Range(0, sessions) from distance in feet select Block(session * 7, 0, BlockKind.Test, distance, Misses(noise, shots, 1.5))];
    }

    public static double[] Misses(Normal noise, int shots, double spread, double bias = 0) =>
        [.. Enumerable.Range(0, shots).Select(_ => Math.Round(bias + (spread * noise.Next()), 2))];
}
