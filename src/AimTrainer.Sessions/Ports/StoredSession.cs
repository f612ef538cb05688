using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A session as it is kept, without its steps.</summary>
/// <param name="Setup">What was fixed before the first shot.</param>
/// <param name="DrillJson">The drill's text as it was used.</param>
/// <param name="Ended">Whether it is over.</param>
public sealed record StoredSession(SessionSetup Setup, string DrillJson, bool Ended);
