namespace AimTrainer.Analysis;

/// <summary>A comparison of throws that follow each other.</summary>
/// <param name="Pairs">How many pairs.</param>
/// <param name="Difference">The ball less the reference ball, by Student's t.</param>
/// <param name="HodgesLehmann">The same by ranks.</param>
public sealed record PairedComparison(int Pairs, MeanDifference Difference, BoundedEstimate HodgesLehmann);
