using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>Whether the host can do its work.</summary>
/// <param name="Ready">Whether it can.</param>
/// <param name="Degraded">Whether something is wrong that the lanes do not need.</param>
/// <param name="Checks">What was looked at; empty for whoever may not know.</param>
public sealed record HealthAnswer(bool Ready, bool Degraded, ValueList<HealthCheck> Checks);
