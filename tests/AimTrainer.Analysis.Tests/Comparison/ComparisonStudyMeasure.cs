namespace AimTrainer.Analysis.Tests;

/// <summary>What came of one measure in many comparisons.</summary>
/// <param name="Name">The measure.</param>
/// <param name="Truth">The difference put in.</param>
/// <param name="Known">How many comparisons tell it.</param>
/// <param name="Held">Share of them whose 95 % limits hold the truth.</param>
/// <param name="HeldUnadjusted">The same without adjustment.</param>
/// <param name="HalfWidth">Mean half width of the limits.</param>
/// <param name="HalfWidthUnadjusted">The same without adjustment.</param>
/// <param name="Claimed">Share that calls it different.</param>
/// <param name="Equal">Share that calls it equal within the margin.</param>
internal sealed record ComparisonStudyMeasure(
    string Name, double Truth, int Known, double Held, double HeldUnadjusted, double HalfWidth, double HalfWidthUnadjusted, double Claimed, double Equal);
