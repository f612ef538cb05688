namespace AimTrainer.Web;

/// <summary>Counts tries of one sort by who tries and over all, a minute at a time; one try too many is turned away before it is looked at.</summary>
/// <param name="mostEach">Most in a minute from one address.</param>
/// <param name="mostOverAll">Most in a minute altogether.</param>
/// <param name="clock">The time.</param>
internal sealed class Tries(int mostEach, int mostOverAll, TimeProvider clock)
{
    private static readonly TimeSpan Window = TimeSpan.FromMinutes(1);

    private readonly Lock _lock = new();
    private readonly Dictionary<string, int> _each = new(StringComparer.Ordinal);
    private DateTimeOffset _since = DateTimeOffset.MinValue;
    private int _overAll;

    /// <summary>Counts a try.</summary>
    /// <returns>Null when it may go on; else how long to wait.</returns>
    public TimeSpan? Refuse(string who)
    {
        var now = clock.GetUtcNow();
        lock (_lock)
        {
            if (now - _since >= Window)
            {
                (_since, _overAll) = (now, 0);
                _each.Clear();
            }

            var tried = _each.GetValueOrDefault(who);
            if (tried >= mostEach || _overAll >= mostOverAll)
            {
                return _since + Window - now;
            }

            _each[who] = tried + 1;
            _overAll++;
            return null;
        }
    }
}
