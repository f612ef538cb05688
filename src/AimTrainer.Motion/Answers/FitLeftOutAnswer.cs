namespace AimTrainer.Motion;

/// <summary>A shot that was not fitted, for machines.</summary>
/// <param name="Line">Its line in the file, or its number in the session.</param>
/// <param name="Why">Why.</param>
public sealed record FitLeftOutAnswer(int Line, string Why);
