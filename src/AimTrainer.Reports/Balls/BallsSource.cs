using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>A session as it was read.</summary>
/// <param name="Setup">What was fixed before the first shot.</param>
/// <param name="Drill">The drill's name.</param>
/// <param name="Record">What was thrown, as it stands now.</param>
public sealed record BallsSource(SessionSetup Setup, string Drill, SessionRecord Record);
