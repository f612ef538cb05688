namespace AimTrainer.Analysis;

/// <summary>Shots that could not be split, and what was not measured of them.</summary>
/// <param name="Why">What they lack.</param>
/// <param name="Shots">How many.</param>
public sealed record NotSplit(string Why, int Shots);
