using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A set of shots that have a time, of each of which only a digest is kept. Ids and sources do not count.</summary>
internal sealed class ShotDigests
{
    // Shots mostly come in the order of their times. Those that do need no hash table, which costs more than all the rest here.
    private readonly List<Digest> _inOrder = [];
    private readonly HashSet<Digest> _others = [];

    public bool Contains(Shot shot)
    {
        if (_inOrder.Count == 0 || shot.Time!.Value.UtcTicks > _inOrder[^1].UtcTicks)
        {
            return false;
        }

        var digest = Digest.Of(shot);
        var found = _inOrder.BinarySearch(digest, Digest.ByTime);
        return (found >= 0 && _inOrder[found] == digest) || _others.Contains(digest);
    }

    public void Add(Shot shot)
    {
        var digest = Digest.Of(shot);
        if (_inOrder.Count == 0 || digest.UtcTicks > _inOrder[^1].UtcTicks)
        {
            _inOrder.Add(digest);
        }
        else
        {
            _others.Add(digest);
        }
    }

    /// <summary>A shot's time, and what its values come to, by two rules that have nothing to do with one another.</summary>
    private readonly record struct Digest(long UtcTicks, int Crossings, int Values)
    {
        public static IComparer<Digest> ByTime { get; } = Comparer<Digest>.Create((one, other) => one.UtcTicks.CompareTo(other.UtcTicks));

        public static Digest Of(Shot shot) => new(
            shot.Time!.Value.UtcTicks, shot.Crossings.GetHashCode(), (shot with { Id = null, Time = null, Source = default }).GetHashCode());
    }
}
