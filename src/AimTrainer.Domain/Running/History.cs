namespace AimTrainer.Domain;

/// <summary>A session's past, newest first. Grows by one node a step, so that an old state stays as it was at no cost.</summary>
internal sealed class History(HistoryItem item, History? before)
{
    public HistoryItem Item => item;

    public History? Before => before;

    /// <summary>The shots of a run that count, newest first.</summary>
    public static IEnumerable<GradedShot> CountedShots(History? newest, int run)
    {
        foreach (var item in Items(newest, run))
        {
            if (item is HistoryItem.Thrown { Shot: { VoidReason: null } shot })
            {
                yield return shot;
            }
        }
    }

    /// <summary>Everything of a run, newest first. Runs follow one another, so the walk stops at the first older one.</summary>
    public static IEnumerable<HistoryItem> Items(History? newest, int run)
    {
        for (var node = newest; node is not null && node.Item.Run >= run; node = node.Before)
        {
            if (node.Item.Run == run)
            {
                yield return node.Item;
            }
        }
    }

    /// <summary>A shot by its number, or null.</summary>
    public static HistoryItem.Thrown? Find(History? newest, int number)
    {
        for (var node = newest; node is not null; node = node.Before)
        {
            if (node.Item is HistoryItem.Thrown thrown && thrown.Shot.Number == number)
            {
                return thrown;
            }
        }

        return null;
    }

    /// <summary>The same past with one shot replaced; nodes older than it are shared.</summary>
    public static History Replace(History newest, GradedShot replacement)
    {
        var newer = new Stack<HistoryItem>();
        var node = newest;
        while (!(node.Item is HistoryItem.Thrown thrown && thrown.Shot.Number == replacement.Number))
        {
            newer.Push(node.Item);
            node = node.Before ?? throw new ArgumentException($"no shot {replacement.Number}", nameof(replacement));
        }

        var replaced = new History(((HistoryItem.Thrown)node.Item) with { Shot = replacement }, node.Before);
        while (newer.TryPop(out var item))
        {
            replaced = new History(item, replaced);
        }

        return replaced;
    }
}
