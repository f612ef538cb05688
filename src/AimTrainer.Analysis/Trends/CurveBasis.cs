namespace AimTrainer.Analysis;

/// <summary>The bent part of a curve with one rate: its value, and how fast that changes with the rate.</summary>
/// <param name="rate">The rate.</param>
/// <param name="x">Where.</param>
internal delegate (double Value, double ByRate) CurveBasis(double rate, double x);
