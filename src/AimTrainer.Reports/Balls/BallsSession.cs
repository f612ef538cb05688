using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>A session that a comparison looked at.</summary>
/// <param name="SessionId">Its id.</param>
/// <param name="At">When it was set up.</param>
/// <param name="Station">On which lane.</param>
/// <param name="Drill">The drill's name.</param>
/// <param name="Ended">Whether it is over.</param>
/// <param name="Balls">The balls thrown in it, in the order in which they came.</param>
/// <param name="Throws">Throws in it, with whichever ball.</param>
public sealed record BallsSession(string SessionId, DateTimeOffset At, int Station, string Drill, bool Ended, ValueList<string> Balls, int Throws);
