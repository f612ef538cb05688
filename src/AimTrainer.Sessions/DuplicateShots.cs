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
    private readonly Dictionary<DateTimeOffset, List<Shot>> _othersAt = [];

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
            if (!_othersAt.TryGetValue(time, out var others))
            {
                _othersAt.Add(time, others = []);
            }

            others.Add(shot);
        }

        return true;
    }

    private bool SeenAt(DateTimeOffset time, Shot shot) =>
        _firstAt.TryGetValue(time, out var first)
        && (IsSame(first, shot) || (_othersAt.TryGetValue(time, out var others) && others.Exists(other => IsSame(other, shot))));

    private static bool IsSame(Shot left, Shot right) =>
        (left.Id is null || right.Id is null || left.Id == right.Id)
        && left with { Id = null, Time = null, Source = default } == right with { Id = null, Time = null, Source = default };
}
