namespace AimTrainer.Motion;

/// <summary>A shot that stands out of a fit, for machines.</summary>
/// <param name="Line">Its line in the file, or its number in the session.</param>
/// <param name="Noises">By how many noises.</param>
public sealed record FitMisfitAnswer(int Line, decimal? Noises);
