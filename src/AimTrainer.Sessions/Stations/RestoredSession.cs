namespace AimTrainer.Sessions;

/// <summary>A session put together again from its log, or why it cannot be.</summary>
internal sealed record RestoredSession(SessionInProgress? Session, string? Problem);
