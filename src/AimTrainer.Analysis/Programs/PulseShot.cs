namespace AimTrainer.Analysis;

/// <summary>One shot as the look over the lanes needs it.</summary>
/// <param name="At">When it came in.</param>
/// <param name="Place">What it was thrown at: only misses of one place are held against one another.</param>
/// <param name="MissBoards">Crossing less centre; null when it is not known.</param>
/// <param name="SpeedMph">Its speed; null when nobody measured it.</param>
public sealed record PulseShot(DateTimeOffset At, string Place, double? MissBoards, double? SpeedMph);
