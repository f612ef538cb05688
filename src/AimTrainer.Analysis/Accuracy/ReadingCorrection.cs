namespace AimTrainer.Analysis;

/// <summary>The spread without what the readings themselves add: rounding to a step, and a sensor's noise.</summary>
/// <remarks>
/// Rounding to a step h adds h²/12 to the variance. Source: Sheppard's correction, in its standard form. A sensor's noise of standard deviation
/// s adds s².
/// </remarks>
/// <param name="StepBoards">
/// The step of the readings: the coarsest of 1, 0.5, 0.25, 0.2, 0.1 and so on of which all crossings are multiples. Null below
/// <see cref="FewestForStep"/> crossings, when a coarse step may be chance.
/// </param>
/// <param name="NoiseBoards">The noise that was stated; null when nobody knows it.</param>
/// <param name="SpreadBoards">Standard deviation (n - 1) without both; not taken out what is not known.</param>
/// <param name="Why">What was not taken out, and why; null when both were.</param>
public sealed record ReadingCorrection(double? StepBoards, double? NoiseBoards, BoundedEstimate SpreadBoards, string? Why)
{
    /// <summary>From how many crossings on their step is told from them.</summary>
    public const int FewestForStep = 5;

    /// <summary>The corrected spread.</summary>
    /// <param name="spread">As measured.</param>
    /// <param name="stepBoards">The step; null when it is not known.</param>
    /// <param name="noiseBoards">The noise; null when it is not known.</param>
    public static ReadingCorrection Of(BoundedEstimate spread, double? stepBoards, double? noiseBoards)
    {
        var step = stepBoards ?? 0;
        var noise = noiseBoards ?? 0;
        var why = (stepBoards, noiseBoards) switch
        {
            (null, null) => $"too few crossings to tell the step of the readings (from {FewestForStep} on), and the sensor's noise is not known",
            (null, _) => $"too few crossings to tell the step of the readings (from {FewestForStep} on)",
            (_, null) => "the sensor's noise is not known",
            _ => null,
        };
        return new ReadingCorrection(stepBoards, noiseBoards, EstimateLimits.Without(spread, (step * step / 12) + (noise * noise)), why);
    }
}
