namespace AimTrainer.Store;

/// <summary>A step of a log, as it is kept.</summary>
/// <param name="Sequence">Counts the session's steps, from 1.</param>
/// <param name="At">When its input came in.</param>
/// <param name="InputJson">What came in.</param>
/// <param name="EventsJson">What came of it.</param>
public sealed record DeliveredStep(long Sequence, DateTimeOffset At, string InputJson, string EventsJson);
