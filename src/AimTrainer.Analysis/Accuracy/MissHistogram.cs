using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// How often each miss came. Measured boards are whole hundredths between the two gutters, so that a million shots at a target have at most
/// some thousand different misses: medians stay exact and memory bounded.
/// </summary>
internal sealed class MissHistogram
{
    private readonly Dictionary<BoardOffset, int> _counts = [];

    public int Count { get; private set; }

    public void Add(BoardOffset miss)
    {
        System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(_counts, miss, out _)++;
        Count++;
    }

    /// <summary>The different misses in boards, lowest first, and how often each came.</summary>
    public (double[] Boards, int[] Times) Sorted()
    {
        var sorted = _counts.OrderBy(pair => pair.Key).ToList();
        return ([.. sorted.Select(pair => pair.Key.Boards)], [.. sorted.Select(pair => pair.Value)]);
    }

    /// <summary>Every different miss and how often it came, in no certain order.</summary>
    public IEnumerable<KeyValuePair<BoardOffset, int>> All() => _counts;

    /// <summary>The value of a rank, from 1, among sorted values that each came several times.</summary>
    public static double OfRank(double[] values, int[] times, int rank)
    {
        var passed = 0;
        for (var i = 0; i < values.Length; i++)
        {
            passed += times[i];
            if (passed >= rank)
            {
                return values[i];
            }
        }

        return values[^1];
    }

    /// <summary>The median of sorted values that each came several times.</summary>
    public static double Median(double[] values, int[] times, int count) =>
        (OfRank(values, times, (count + 1) / 2) + OfRank(values, times, (count / 2) + 1)) / 2;
}
