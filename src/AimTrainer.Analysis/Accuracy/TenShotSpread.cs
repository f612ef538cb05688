using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// How far apart the outermost of ten shots in a row were: the paper test. Of the ball's centre, highest less lowest miss: the same as highest less
/// lowest board, except that a target that moves does not count as spread.
/// </summary>
/// <param name="Tens">Whole tens of measured shots, in the order thrown; what is left over is not counted.</param>
/// <param name="LatestBoards">The spread of the latest ten.</param>
/// <param name="LatestInches">The same in inches on this lane.</param>
/// <param name="MeanBoards">The mean over all tens.</param>
/// <param name="SmallestBoards">The smallest.</param>
/// <param name="LargestBoards">The largest.</param>
/// <param name="Reference">The published band that the latest ten keep within; null when they are wider than all, or not at the arrows.</param>
/// <param name="Caveats">What must be said beside the reference.</param>
/// <param name="Why">Why something is null; null when nothing is.</param>
public sealed record TenShotSpread(
    int Tens,
    double? LatestBoards,
    double? LatestInches,
    double? MeanBoards,
    double? SmallestBoards,
    double? LargestBoards,
    PublishedSpreadBand? Reference,
    ValueList<string> Caveats,
    string? Why);
