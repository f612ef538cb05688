using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>The accuracy of the shots that belong together.</summary>
/// <param name="By">By what they were put together.</param>
/// <param name="Name">What they have in common.</param>
/// <param name="Shots">How many.</param>
/// <param name="PerTarget">Each target by name, in the order first seen.</param>
/// <param name="Line">For shots at lines: the line as a whole; null when none was thrown at a line.</param>
public sealed record AccuracyGroup(Grouping By, string Name, int Shots, ValueList<TargetAccuracy> PerTarget, LineAccuracy? Line);
