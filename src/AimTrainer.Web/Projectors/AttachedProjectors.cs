using System.Text.Json;

namespace AimTrainer.Web;

/// <summary>The calibrations that are open to this host's pages, one for a projector of a station: the newest takes the place of an older.</summary>
/// <param name="clock">The time.</param>
internal sealed class AttachedProjectors(TimeProvider clock)
{
    private readonly Lock _lock = new();
    private readonly SortedDictionary<(int Station, string Projector), AttachedProjector> _attached = [];

    /// <summary>Raised when one came, changed or left.</summary>
    public ChangeSignal Changes { get; } = new();

    /// <summary>All of them, by station and name.</summary>
    public IReadOnlyList<AttachedProjector> All
    {
        get
        {
            lock (_lock)
            {
                return [.. _attached.Values];
            }
        }
    }

    /// <summary>One; null when there is none.</summary>
    public AttachedProjector? Find(int station, string projector)
    {
        lock (_lock)
        {
            return _attached.GetValueOrDefault((station, projector));
        }
    }

    /// <summary>Attaches one. An older one of the same projector leaves: its line may be dead and nobody knows.</summary>
    public AttachedProjector Attach(int station, string projector, JsonElement state)
    {
        var made = new AttachedProjector(station, projector, state, clock.GetUtcNow(), clock, Changes.Raise);
        AttachedProjector? older;
        lock (_lock)
        {
            older = _attached.GetValueOrDefault((station, projector));
            _attached[(station, projector)] = made;
        }

        older?.Leave(replaced: true);
        Changes.Raise();
        return made;
    }

    /// <summary>The line of one has ended.</summary>
    public void Leave(AttachedProjector projector)
    {
        lock (_lock)
        {
            if (_attached.GetValueOrDefault((projector.Station, projector.Projector)) == projector)
            {
                _attached.Remove((projector.Station, projector.Projector));
            }
        }

        projector.Leave();
        Changes.Raise();
    }
}
