using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>What a number of shots at one target came to. What is not known is null: no rate of nothing, no scatter of one shot.</summary>
/// <param name="Name">The target's name.</param>
/// <param name="Shots">Shots thrown at it.</param>
/// <param name="Graded">Those whose crossing is known; only these count below.</param>
/// <param name="Hits">Those that held the target.</param>
/// <param name="HitRate">Hits / graded, 0 to 1. Null when none was graded.</param>
/// <param name="HitRateLow">Lower Wilson limit of the hit rate, 95 %. Null when none was graded.</param>
/// <param name="HitRateHigh">Upper Wilson limit of the hit rate, 95 %. Null when none was graded.</param>
/// <param name="ConstantErrorBoards">See <see cref="ErrorMeasures.ConstantError"/>.</param>
/// <param name="VariableErrorBoards">See <see cref="ErrorMeasures.VariableError"/>.</param>
/// <param name="AbsoluteErrorBoards">See <see cref="ErrorMeasures.AbsoluteError"/>.</param>
/// <param name="TotalErrorBoards">See <see cref="ErrorMeasures.TotalError"/>.</param>
/// <param name="SpreadBoards">
/// Highest less lowest crossing, of the ball's centre and not of its edges. Grows with the number of shots. Null below two graded.
/// </param>
/// <param name="MinBoard">Lowest crossing, nearest to the ball-hand edge. Null when none was graded.</param>
/// <param name="MaxBoard">Highest crossing. Null when none was graded.</param>
public sealed record TargetSummary(
    string Name,
    int Shots,
    int Graded,
    int Hits,
    double? HitRate,
    double? HitRateLow,
    double? HitRateHigh,
    double? ConstantErrorBoards,
    double? VariableErrorBoards,
    double? AbsoluteErrorBoards,
    double? TotalErrorBoards,
    double? SpreadBoards,
    Board? MinBoard,
    Board? MaxBoard);
