namespace AimTrainer.Sessions;

/// <summary>One session of a bowler's practice.</summary>
/// <param name="SessionId">Its id.</param>
/// <param name="StartedAt">When it was set up.</param>
/// <param name="Ended">Whether it is over.</param>
/// <param name="DrillId">Which drill.</param>
/// <param name="DrillName">The drill's name for people.</param>
/// <param name="LaneName">What people call the lane.</param>
/// <param name="Shots">Shots that count.</param>
/// <param name="Points">Their points.</param>
public sealed record PracticeSession(
    string SessionId, DateTimeOffset StartedAt, bool Ended, string DrillId, string DrillName, string LaneName, int Shots, int Points);
