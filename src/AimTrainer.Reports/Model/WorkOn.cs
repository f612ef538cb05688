namespace AimTrainer.Reports;

/// <summary>The one thing to work on next, and the drill for it.</summary>
/// <param name="Rule">Which rule chose it.</param>
/// <param name="Text">What to work on, and why.</param>
/// <param name="DrillId">The drill.</param>
/// <param name="DrillName">Its name for people.</param>
public sealed record WorkOn(WorkOnRule Rule, string Text, string DrillId, string DrillName);
