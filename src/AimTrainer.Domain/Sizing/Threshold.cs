namespace AimTrainer.Domain;

/// <summary>The width at which a staircase turns back and forth.</summary>
/// <param name="Boards">Mean of the last reversals, in boards.</param>
/// <param name="Reversals">How many it is the mean of.</param>
public readonly record struct Threshold(double Boards, int Reversals);
