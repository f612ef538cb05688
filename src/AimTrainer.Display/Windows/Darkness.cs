namespace AimTrainer.Display;

/// <summary>
/// Holds why the displays of a window are dark, if they are: for a reason of its own, or of any of its parts. Safe from many threads.
/// </summary>
/// <param name="wake">Called after each change, on the thread that brought it.</param>
public sealed class Darkness(Action wake)
{
    private readonly Lock _lock = new();
    private readonly List<Darkness> _parts = [];
    private DarkReason? _own;
    private volatile DarkReason? _reason;

    /// <summary>Why; null when they are not. That projection is stopped comes before every other reason: the others may be said in words, which are light.</summary>
    public DarkReason? Reason => _reason;

    /// <summary>Makes them dark, or lets them show again as far as no part holds them dark.</summary>
    /// <param name="reason">Why; null to show again.</param>
    public void Set(DarkReason? reason)
    {
        lock (_lock)
        {
            _own = reason;
        }

        Weigh();
    }

    /// <summary>One more source of darkness: while it is set, the displays are dark, whatever other sources say.</summary>
    public Darkness Part()
    {
        var part = new Darkness(Weigh);
        lock (_lock)
        {
            _parts.Add(part);
        }

        return part;
    }

    private void Weigh()
    {
        lock (_lock)
        {
            var all = _parts.Select(part => part.Reason).Prepend(_own).OfType<DarkReason>().ToList();
            var reason = all.Find(one => one is DarkReason.Stopped) ?? all.FirstOrDefault();
            if (reason == _reason)
            {
                return;
            }

            _reason = reason;
        }

        wake();
    }
}
