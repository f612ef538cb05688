using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>
/// Puts a lane that several bowlers share together from its order and the logs of their sessions, for a process that only reads the
/// record: it has the same picture as the one that runs the lane. For one thread at a time.
/// </summary>
/// <param name="station">The station, from 1.</param>
/// <param name="names">How names may be shown on screens.</param>
public sealed class LaneFollower(int station, IScreenNames names)
{
    private SessionInProgress? _shown;

    /// <summary>The picture of one who throws alone.</summary>
    public SessionSnapshot Alone(SessionFollower session) => LanePicture.Of(station, _shown = session.Session, null, _nobody, null, names);

    /// <summary>The picture of a lane whose bowlers take turns.</summary>
    /// <param name="lineup">The order as it was kept; shots that came after it are counted here.</param>
    /// <param name="sessions">The sessions of its places by their ids, each as far as its log goes; a place whose session was never made has none.</param>
    /// <exception cref="ArgumentException">No place has a session.</exception>
    public SessionSnapshot Together(Lineup lineup, IReadOnlyDictionary<string, SessionFollower> sessions)
    {
        var together = lineup.Places.AsEnumerable().Select(place => place.SessionId).Where(sessions.ContainsKey)
            .ToDictionary(id => id, id => sessions[id].Session, StringComparer.Ordinal);
        if (together.Count == 0)
        {
            throw new ArgumentException("no place of the order has a session", nameof(sessions));
        }

        var settled = LanePicture.Settled(lineup, together);
        _shown = LanePicture.Shown(settled, together, _shown is { } shown ? together.GetValueOrDefault(shown.State.Setup.SessionId) : null);
        return LanePicture.Of(station, _shown, settled, together, LanePicture.LastOf(together.Values), names);
    }

    private static readonly Dictionary<string, SessionInProgress> _nobody = [];
}
