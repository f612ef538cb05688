namespace AimTrainer.Calibration;

/// <summary>How well a map fits its marks.</summary>
/// <param name="RmsPixels">Root mean square of the marks' distances from where the map puts them. Four marks without distortion always give 0, which says nothing.</param>
/// <param name="WorstPixels">The largest of those distances.</param>
/// <param name="RmsBoards">Root mean square of the errors across the lane, in boards; null when one is not known.</param>
/// <param name="WorstBoards">The largest error across the lane, in boards, without its side; null when one is not known.</param>
/// <param name="LeaveOneOutRmsPixels">Root mean square of the leave-one-out errors that are known; null when none is.</param>
/// <param name="LeaveOneOutWorstPixels">The largest of them; null when none is known.</param>
/// <param name="SigmaPixels">The spread of one coordinate of a mark, worked out from what the fit left over; null when it leaves nothing to judge by.</param>
/// <param name="Condition">
/// Condition of the linear equations (largest over smallest singular value that counts): about 1 to 100 for marks spread over the lane, ever larger
/// the nearer the marks come to lying in a line.
/// </param>
public sealed record FitQuality(
    double RmsPixels, double WorstPixels, double? RmsBoards, double? WorstBoards, double? LeaveOneOutRmsPixels, double? LeaveOneOutWorstPixels,
    double? SigmaPixels, double Condition);
