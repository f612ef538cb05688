using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A set of shots that have a time, of each of which only a digest is kept. Ids and sources do not count.</summary>
internal sealed class ShotDigests
{
    // Shots mostly come in the order of their times. Those that do need no hash table, which costs more than all the rest here.
    private readonly List<ShotDigest> _inOrder = [];
    private readonly HashSet<ShotDigest> _others = [];

    public bool Contains(Shot shot)
    {
        if (_inOrder.Count == 0 || shot.Time!.Value.UtcTicks > _inOrder[^1].UtcTicks)
        {
            return false;
        }

        var digest = ShotDigest.Of(shot);
        var found = _inOrder.BinarySearch(digest, ShotDigest.ByTime);
        return (found >= 0 && _inOrder[found] == digest) || _others.Contains(digest);
    }

    public void Add(Shot shot)
    {
        var digest = ShotDigest.Of(shot);
        if (_inOrder.Count == 0 || digest.UtcTicks > _inOrder[^1].UtcTicks)
        {
            _inOrder.Add(digest);
        }
        else
        {
            _others.Add(digest);
        }
    }
}
