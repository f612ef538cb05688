namespace AimTrainer.Domain;

/// <summary>A session of a program.</summary>
/// <param name="Name">Its name, one of a kind within the program.</param>
/// <param name="IsRetentionTest">Whether it begins with a test, before any practice: what has stayed since the last time.</param>
/// <param name="Drills">What is thrown, in order.</param>
public sealed record PlannedSession(string Name, bool IsRetentionTest, ValueList<PlannedDrill> Drills);
