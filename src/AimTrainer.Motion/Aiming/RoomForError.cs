namespace AimTrainer.Motion;

/// <summary>How far off one throw may be on the best line, all else as meant, and still reach the window; boards, positive inward.</summary>
/// <param name="ParallelOutward">Laydown and target alike, outward: 0 or less.</param>
/// <param name="ParallelInward">The same inward.</param>
/// <param name="ArrowsOutward">Laydown as meant, at the arrows, outward: 0 or less.</param>
/// <param name="ArrowsInward">The same inward.</param>
public sealed record RoomForError(double ParallelOutward, double ParallelInward, double ArrowsOutward, double ArrowsInward);
