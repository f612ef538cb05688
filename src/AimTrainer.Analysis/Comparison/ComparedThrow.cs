using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>One throw of a comparison.</summary>
/// <param name="Number">Its number, as whoever reads the result knows it.</param>
/// <param name="Shot">What was observed.</param>
/// <param name="Ball">The ball's name; null when nobody said.</param>
/// <param name="Line">The line's name; null when nobody said.</param>
public sealed record ComparedThrow(int Number, Shot Shot, string? Ball, string? Line);
