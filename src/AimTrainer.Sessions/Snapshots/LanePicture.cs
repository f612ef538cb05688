using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>
/// What a lane shows: the session of whoever's turn it is, the order, and names as screens may show them. One piece of code for the
/// station that runs the lane and for whoever follows its record, so that both show the same.
/// </summary>
internal static class LanePicture
{
    /// <summary>The picture.</summary>
    /// <param name="station">The station, from 1.</param>
    /// <param name="session">The session that is shown; null for none.</param>
    /// <param name="lineup">The order; null where one throws alone.</param>
    /// <param name="together">The sessions of the order, all of them.</param>
    /// <param name="last">The newest shot of the lane, its screen name left open; null before the first.</param>
    /// <param name="names">How names may be shown; null shows initials.</param>
    public static SessionSnapshot Of(
        int station, SessionInProgress? session, Lineup? lineup, IReadOnlyDictionary<string, SessionInProgress> together, LastThrow? last, IScreenNames? names)
    {
        if (session is null)
        {
            return SessionSnapshot.Idle(station);
        }

        string NameOf(SessionSetup setup) => setup.Simulated ? setup.Bowler : names?.Of(setup.Bowler) ?? ScreenName.Initials(setup.Bowler);
        return session.Picture() with
        {
            NameOnScreen = session.State.Setup is { Simulated: false } setup ? names?.Of(setup.Bowler) : null,
            Turns = lineup is null ? null : LaneTurns.Of(
                lineup, id => together[id].State, NameOf,
                last is not null && together.TryGetValue(last.SessionId, out var thrower) ? last with { ScreenName = NameOf(thrower.State.Setup) } : null),
        };
    }

    /// <summary>Whose session is shown: of whoever has the turn. When nobody throws, what was shown last stays, so that its end can be read.</summary>
    /// <param name="lineup">The order, settled, with at least one place.</param>
    /// <param name="together">The sessions of the order.</param>
    /// <param name="shown">What was shown last; null for nothing.</param>
    public static SessionInProgress Shown(Lineup lineup, IReadOnlyDictionary<string, SessionInProgress> together, SessionInProgress? shown) =>
        lineup.Throws is { } now ? together[now.SessionId]
        : shown is not null && together.ContainsKey(shown.State.Setup.SessionId) ? shown : together[lineup.Places[0].SessionId];

    /// <summary>The order after the shots that the sessions have; places whose session was never made are left out.</summary>
    /// <param name="lineup">The order as it was kept.</param>
    /// <param name="together">Its sessions, as far as there are any.</param>
    public static Lineup Settled(Lineup lineup, IReadOnlyDictionary<string, SessionInProgress> together) => TurnRule.Settle(
        Without(lineup, lineup.Places.AsEnumerable().Select(place => place.SessionId).Where(id => !together.ContainsKey(id)).ToHashSet(StringComparer.Ordinal)),
        id => together[id].State is var state ? new SessionCount(state.LastNumber, state.Phase == SessionPhase.Ended) : default);

    /// <summary>The order without some sessions; whoever had the turn keeps it.</summary>
    public static Lineup Without(Lineup lineup, HashSet<string> gone)
    {
        if (gone.Count == 0)
        {
            return lineup;
        }

        var now = lineup.Throws is { } throws && !gone.Contains(throws.SessionId) ? throws
            : lineup.Places.AsEnumerable().FirstOrDefault(place => place.Status == TurnStatus.Here && !gone.Contains(place.SessionId));
        var places = lineup.Places.AsEnumerable().Where(place => !gone.Contains(place.SessionId)).ToValueList();
        int? current = now is null ? null : places.AsEnumerable().ToList().FindIndex(place => place.SessionId == now.SessionId);
        return lineup with { Number = lineup.Number + 1, Places = places, Current = current };
    }

    /// <summary>The newest shot of sessions that were read from the record: told by the time at which it came in.</summary>
    public static LastThrow? LastOf(IEnumerable<SessionInProgress> sessions) =>
        sessions.Select(session => session.State).MaxBy(state => state.FindShot(state.LastNumber)?.At) is { } newest && newest.FindShot(newest.LastNumber) is { } shot
            ? ThrowOf(newest.Setup, shot) : null;

    /// <summary>A shot as the newest of its lane.</summary>
    public static LastThrow ThrowOf(SessionSetup setup, GradedShot shot) => new(setup.SessionId, setup.Bowler, "", shot.Number, shot.Held);
}
