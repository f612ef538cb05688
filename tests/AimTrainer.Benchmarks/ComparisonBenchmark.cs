using System.Diagnostics;
using System.Globalization;
using AimTrainer.Analysis.Tests;

namespace AimTrainer.Benchmarks;

/// <summary>How far comparisons of two balls can be trusted, and how many throws they take: the tables of <c>docs/comparison.md</c>.</summary>
internal static class ComparisonBenchmark
{
    private const int Comparisons = 2_000;
    private const ulong Seed = 31_313;

    public static Task RunAsync()
    {
        var from = Stopwatch.GetTimestamp();
        foreach (var each in (ReadOnlySpan<int>)[8, 12])
        {
            Trust(new("alike", each, 1.3));
            Trust(new("0.5 mph faster", each, 1.3, FasterMph: 0.5));
            Trust(new("lane drifts", each, 1.3, WearAThrow: 0.02));
            Trust(new("gross misses", each, 1.3, GrossShare: 0.05));
            Trust(new("all of it", each, 1.3, 0.5, 0.02, 0.05));
            Trust(new("all of it, in blocks", each, 1.3, 0.5, 0.02, 0.05, InBlocks: true));
            Trust(new("equal balls", each, 1));
            Trust(new("equal balls, all of it", each, 1, 0.5, 0.02, 0.05));
        }

        foreach (var grip in (ReadOnlySpan<double>)[1.1, 1.3])
        {
            foreach (var each in (ReadOnlySpan<int>)[8, 12, 20, 30])
            {
                Power(new("power", each, grip, 0, 0.02, 0.05));
            }
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"comparison: {Stopwatch.GetElapsedTime(from).TotalSeconds:0} s for all"));
        return Task.CompletedTask;
    }

    private static void Trust(ComparisonStudyScenario scenario)
    {
        var result = new ComparisonStudy(scenario, Seed).Run(Comparisons);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"comparison {scenario.Name}, {scenario.ThrowsEach} each, {result.Comparisons} comparisons: "
            + $"any difference claimed {result.AnyClaim:0.0 %}, any spread {result.AnySpreadClaim:0.0 %}"));
        foreach (var one in result.Measures)
        {
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"  {one.Name}: true {one.Truth:0.###}; known {one.Known}; within the limits {one.Held:0.0 %}, unadjusted {one.HeldUnadjusted:0.0 %}; "
                + $"limits ± {one.HalfWidth:0.###}, unadjusted ± {one.HalfWidthUnadjusted:0.###}; claimed {one.Claimed:0.0 %}; equal {one.Equal:0.0 %}"));
        }
    }

    private static void Power(ComparisonStudyScenario scenario)
    {
        var result = new ComparisonStudy(scenario, Seed).Run(Comparisons);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"power: {scenario.ThrowsEach} each, grip {scenario.Grip}: ")
            + string.Join("; ", result.Measures.Select(one => string.Create(
                CultureInfo.InvariantCulture, $"{one.Name} true {one.Truth:0.###} claimed {one.Claimed:0 %} equal {one.Equal:0 %}"))));
    }
}
