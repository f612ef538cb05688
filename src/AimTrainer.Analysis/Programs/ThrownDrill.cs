namespace AimTrainer.Analysis;

/// <summary>A session of the record as a program counts it.</summary>
/// <param name="SessionId">Its id.</param>
/// <param name="DrillId">Which drill was thrown.</param>
/// <param name="At">When it was set up.</param>
/// <param name="Ended">Whether it is over; an open one counts for nothing yet.</param>
public sealed record ThrownDrill(string SessionId, string DrillId, DateTimeOffset At, bool Ended);
