namespace AimTrainer.Analysis;

/// <summary>Everything that is told of the misses at one target. All of the shots given, however few; what few shots cannot tell is null and says why.</summary>
/// <remarks>
/// Sources: Schmidt &amp; Lee, Motor Control and Learning, chapter "Methodology", for constant, variable, absolute and total error; Student's t
/// and chi-square in their standard forms for the limits.
/// </remarks>
/// <param name="Name">The target.</param>
/// <param name="Shots">Shots thrown at it.</param>
/// <param name="Measured">Those whose crossing is known, n: only these count below.</param>
/// <param name="Interpolated">How many of these were worked out between two crossings.</param>
/// <param name="HitRate">How often it was held.</param>
/// <param name="ConstantErrorBoards">Bias: mean miss, positive inside; limits by Student's t.</param>
/// <param name="AbsoluteConstantErrorBoards">Its size.</param>
/// <param name="VariableErrorBoards">Scatter about the bias, divided by n; limits by chi-square.</param>
/// <param name="StandardDeviationBoards">The same divided by n - 1, as inference needs it; limits by chi-square.</param>
/// <param name="RelativeErrorOfSpread">Relative standard error of the scatter, 1 / √(2(n - 1)): 0.24 at ten shots.</param>
/// <param name="AbsoluteErrorBoards">Mean size of a miss; limits by Student's t, approximate. Mixes bias and scatter.</param>
/// <param name="TotalErrorBoards">Root mean square miss; limits by a chi-square of the same mean and variance (Patnaik 1949), approximate.</param>
/// <param name="EffectiveWidth">4.133 standard deviations.</param>
/// <param name="Corrected">The spread without rounding and sensor noise.</param>
/// <param name="Robust">Figures that gross misses cannot spoil.</param>
/// <param name="TenShotSpread">The paper test.</param>
public sealed record TargetAccuracy(
    string Name,
    int Shots,
    int Measured,
    int Interpolated,
    HitRateEstimate HitRate,
    BoundedEstimate ConstantErrorBoards,
    double? AbsoluteConstantErrorBoards,
    BoundedEstimate VariableErrorBoards,
    BoundedEstimate StandardDeviationBoards,
    double? RelativeErrorOfSpread,
    BoundedEstimate AbsoluteErrorBoards,
    BoundedEstimate TotalErrorBoards,
    EffectiveWidth EffectiveWidth,
    ReadingCorrection Corrected,
    RobustAccuracy Robust,
    TenShotSpread TenShotSpread);
