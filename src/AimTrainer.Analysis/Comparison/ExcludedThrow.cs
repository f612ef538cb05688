namespace AimTrainer.Analysis;

/// <summary>A throw that is left out of a comparison, and why.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Ball">The ball's name; null when nobody said.</param>
/// <param name="Line">The line's name; null when nobody said.</param>
/// <param name="Measure">The only measure of which it is left out; null when it is left out of all.</param>
/// <param name="Reason">Why.</param>
public sealed record ExcludedThrow(int Number, string? Ball, string? Line, string? Measure, string Reason);
