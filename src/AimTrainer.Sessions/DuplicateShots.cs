using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>
/// Tells shots that were already taken: the same id, or the same time and values. Two shots with different ids are different
/// shots, whatever they hold; a shot without id and time is never taken for another.
/// </summary>
/// <remarks>
/// Remembers every shot that it has let pass and that has an id or a time, in few bytes: of values it keeps a digest of 128 bits, so
/// that a million shots can be gone through. For one reader: not safe for several threads.
/// </remarks>
public sealed class DuplicateShots
{
    private readonly HashSet<string> _ids = new(StringComparer.Ordinal);
    private readonly ShotDigests _withId = new();
    private readonly ShotDigests _withoutId = new();

    /// <summary>Whether this shot was seen before.</summary>
    public bool Contains(Shot shot)
    {
        if (shot.Id is { } id && _ids.Contains(id))
        {
            return true;
        }

        if (shot.Time is null)
        {
            return false;
        }

        // Of two shots with ids only the ids count.
        return _withoutId.Contains(shot) || (shot.Id is null && _withId.Contains(shot));
    }

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

        if (shot.Time is not null)
        {
            (shot.Id is null ? _withoutId : _withId).Add(shot);
        }

        return true;
    }
}
