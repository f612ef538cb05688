using MathNet.Numerics.LinearAlgebra;

namespace AimTrainer.Calibration;

/// <summary>How the unknowns of a fit are spread when the marks are, by a pixel each way.</summary>
/// <param name="Covariance">Covariance of the unknowns for a spread of one pixel.</param>
/// <param name="Condition">Largest over smallest singular value of the slopes, each unknown in units of its own effect.</param>
internal sealed record ParameterSpread(Matrix<double> Covariance, double Condition);
