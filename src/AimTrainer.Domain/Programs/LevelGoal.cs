namespace AimTrainer.Domain;

/// <summary>A goal of one level: how often the drill's test targets are to be held.</summary>
/// <param name="Level">The level's name.</param>
/// <param name="HeldShare">Shots that hold their target / shots whose crossing is known, more than 0 and less than 1.</param>
public sealed record LevelGoal(string Level, double HeldShare);
