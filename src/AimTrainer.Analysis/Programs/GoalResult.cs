namespace AimTrainer.Analysis;

/// <summary>What a goal of a program came to, from test blocks alone.</summary>
/// <param name="DrillId">The drill.</param>
/// <param name="HeldShare">The goal.</param>
/// <param name="Rate">How often the test targets were held, with limits.</param>
/// <param name="Standing">Reached when the lower limit is at the goal or above, not yet when the upper one is below.</param>
public sealed record GoalResult(string DrillId, double HeldShare, HitRateEstimate Rate, GoalStanding Standing);
