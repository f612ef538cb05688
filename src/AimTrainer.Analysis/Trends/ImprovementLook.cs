namespace AimTrainer.Analysis;

/// <summary>One look at the first so many sessions.</summary>
/// <param name="Sessions">How many it took in.</param>
/// <param name="Slope">Change of the log spread for each session.</param>
/// <param name="Low">Lower limit; null when all values are equal.</param>
/// <param name="High">Upper limit; null when the lower is.</param>
/// <param name="Verdict">What it says.</param>
public sealed record ImprovementLook(int Sessions, double Slope, double? Low, double? High, ImprovementVerdict Verdict);
