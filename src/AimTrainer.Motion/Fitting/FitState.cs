namespace AimTrainer.Motion;

/// <summary>Where a fit stands.</summary>
/// <param name="Lane">The lane's numbers.</param>
/// <param name="Throws">The free numbers of each shot.</param>
/// <param name="Cost">Sum of squares, in noises.</param>
internal sealed record FitState(LaneNumbers Lane, double[][] Throws, double Cost);
