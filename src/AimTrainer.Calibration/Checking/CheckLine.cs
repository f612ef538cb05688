using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>One line of the check picture.</summary>
/// <param name="Kind">What it shows.</param>
/// <param name="Label">What to write beside it ("20", "45 ft"); empty for nothing. A board is counted from the right edge.</param>
/// <param name="Points">
/// Its points, joined in this order; an outline ends where it began. Straight lines have a point at every foot or every board, so that
/// they follow a lens that bends them.
/// </param>
public sealed record CheckLine(CheckLineKind Kind, string Label, ValueList<LanePoint> Points);
