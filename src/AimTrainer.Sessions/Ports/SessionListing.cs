namespace AimTrainer.Sessions;

/// <summary>One line of the list of sessions.</summary>
/// <param name="SessionId">Its id.</param>
/// <param name="StartedAt">When it was set up.</param>
/// <param name="Station">On which station.</param>
/// <param name="Bowler">Who threw.</param>
/// <param name="DrillId">Which drill.</param>
/// <param name="DrillName">The drill's name for people.</param>
/// <param name="Shots">Shots that count.</param>
/// <param name="Points">Their points.</param>
/// <param name="Ended">Whether it is over; an open one can be gone on with.</param>
/// <param name="Simulated">Whether the simulated bowler threw.</param>
public sealed record SessionListing(
    string SessionId, DateTimeOffset StartedAt, int Station, string Bowler, string DrillId, string DrillName, int Shots, int Points, bool Ended,
    bool Simulated);
