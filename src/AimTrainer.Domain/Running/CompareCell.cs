namespace AimTrainer.Domain;

/// <summary>What one ball has thrown at one aim.</summary>
internal readonly record struct CompareCell(int Good, int Throws);
