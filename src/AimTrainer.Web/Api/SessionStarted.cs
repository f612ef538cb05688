namespace AimTrainer.Web;

/// <summary>A session that was started.</summary>
/// <param name="SessionId">Its id.</param>
/// <param name="Station">Its station.</param>
public sealed record SessionStarted(string SessionId, int Station);
