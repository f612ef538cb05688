using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>Looks at the first shots of a source, to learn whose they are, without losing any.</summary>
internal sealed class FirstShots
{
    // A bound on what is held: a source that does not say by then is taken not to say.
    private const int MostLookedAt = 10_000;

    private readonly List<FeedItem> _read = [];
    private readonly IEnumerator<FeedItem> _rest;

    private FirstShots(IEnumerator<FeedItem> items) => _rest = items;

    /// <summary>Whether there is any shot at all, of whomever.</summary>
    public bool Any { get; private set; }

    /// <summary>Who threw the first shot, when the source says so.</summary>
    public string? Bowler { get; private set; }

    /// <summary>With which hand the bowler throws, when the source says so.</summary>
    public Hand? Hand { get; private set; }

    /// <summary>When the bowler's first shot was thrown, when the source says so.</summary>
    public DateTimeOffset? Time { get; private set; }

    /// <summary>Reads until the bowler's hand is known.</summary>
    /// <param name="items">The source.</param>
    /// <param name="bowler">The bowler who is asked for; null for the one of the first shot.</param>
    public static FirstShots Of(IEnumerator<FeedItem> items, string? bowler)
    {
        var first = new FirstShots(items);
        var found = false;
        while (first.Hand is null && (!first.Any || first._read.Count < MostLookedAt) && items.MoveNext())
        {
            first._read.Add(items.Current);
            if (items.Current is not FeedItem.ShotRead shot)
            {
                continue;
            }

            first.Bowler = first.Any ? first.Bowler : shot.Bowler;
            first.Any = true;
            if (shot.Bowler is null || (bowler ?? first.Bowler) is not { } wanted || string.Equals(shot.Bowler, wanted, StringComparison.OrdinalIgnoreCase))
            {
                first.Time = found ? first.Time : shot.Shot.Time;
                first.Hand = shot.Hand;
                found = true;
            }
        }

        return first;
    }

    /// <summary>Everything, from the first item on. Call once.</summary>
    public IEnumerable<FeedItem> AndTheRest()
    {
        foreach (var item in _read)
        {
            yield return item;
        }

        while (_rest.MoveNext())
        {
            yield return _rest.Current;
        }
    }
}
