using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>What came of a coach's action. The same id sent again gets the same answer.</summary>
/// <param name="Id">The sender's name for it; null when it had none.</param>
/// <param name="SessionId">The session.</param>
/// <param name="Sequence">The step of the session's log that holds it.</param>
/// <param name="Events">What came of it.</param>
public sealed record ActionAnswer(string? Id, string SessionId, long Sequence, ValueList<SessionEvent> Events);
