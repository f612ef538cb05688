namespace AimTrainer.Calibration;

/// <summary>Where the steps down may start.</summary>
/// <param name="Unknowns">The unknowns of a <see cref="Reprojection"/>.</param>
/// <param name="SumOfSquares">The sum of squared errors there, in square pixels.</param>
/// <param name="Condition">Condition of the linear equations that led there.</param>
internal sealed record MapStart(double[] Unknowns, double SumOfSquares, double Condition);
