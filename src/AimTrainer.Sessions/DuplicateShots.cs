using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>
/// Tells shots that were already taken: the same id, or the same time and values. Two shots with different ids are different
/// shots, whatever they hold; a shot without id and time is never taken for another.
/// </summary>
/// <remarks>Remembers every shot that it has let pass and that has an id or a time. For one reader: not safe for several threads.</remarks>
public sealed class DuplicateShots
{
    private readonly HashSet<string> _ids = new(StringComparer.Ordinal);
    private readonly Dictionary<DateTimeOffset, Shot> _firstAt = [];

    // More shots at one time (a file that tells only days): the ids that came with the same values; most times have one shot only.
    private readonly Dictionary<Shot, List<string?>> _others = [];

    /// <summary>Whether this shot was seen before.</summary>
    public bool Contains(Shot shot) => (shot.Id is { } id && _ids.Contains(id)) || (shot.Time is { } at && SeenAt(at, shot));

    /// <summary>Remembers a shot.</summary>
    /// <returns>Whether it is new; false when it was seen before.</returns>
    public bool Add(Shot shot)
    {
        if (Contains(shot))
        {
            return false;
        }

        if (shot.Id is { } id)
        {
            _ids.Add(id);
        }

        if (shot.Time is { } time && !_firstAt.TryAdd(time, shot))
        {
            var values = ValuesOf(shot);
            if (!_others.TryGetValue(values, out var ids))
            {
                _others.Add(values, ids = []);
            }

            ids.Add(shot.Id);
        }

        return true;
    }

    private bool SeenAt(DateTimeOffset time, Shot shot)
    {
        if (!_firstAt.TryGetValue(time, out var first))
        {
            return false;
        }

        var values = ValuesOf(shot);
        return (IsSame(first.Id, shot.Id) && ValuesOf(first) == values)
            || (_others.TryGetValue(values, out var ids) && ids.Exists(id => IsSame(id, shot.Id)));
    }

    private static Shot ValuesOf(Shot shot) => shot with { Id = null, Source = default };

    private static bool IsSame(string? left, string? right) => left is null || right is null || left == right;
}
