using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>Looks at the first shot of a source, to learn whose it is, without losing it.</summary>
internal sealed class FirstShots
{
    private readonly List<FeedItem> _read = [];
    private readonly IEnumerator<FeedItem> _rest;

    private FirstShots(IEnumerator<FeedItem> items) => _rest = items;

    /// <summary>Whether there is any shot at all.</summary>
    public bool Any { get; private set; }

    /// <summary>Who threw the first shot, when the source says so.</summary>
    public string? Bowler { get; private set; }

    /// <summary>With which hand, when the source says so.</summary>
    public Hand? Hand { get; private set; }

    /// <summary>When it was thrown, when the source says so.</summary>
    public DateTimeOffset? Time { get; private set; }

    public static FirstShots Of(IEnumerator<FeedItem> items)
    {
        var first = new FirstShots(items);
        while (items.MoveNext())
        {
            first._read.Add(items.Current);
            if (items.Current is FeedItem.ShotRead shot)
            {
                first.Any = true;
                first.Bowler = shot.Bowler;
                first.Hand = shot.Hand;
                first.Time = shot.Shot.Time;
                break;
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
