using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>Whether the host can do its work.</summary>
/// <param name="Ready">Whether it can.</param>
/// <param name="Checks">What was looked at; empty for whoever may not know.</param>
public sealed record HealthAnswer(bool Ready, ValueList<HealthCheck> Checks);
