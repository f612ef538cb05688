namespace AimTrainer.Domain;

/// <summary>A target whose place is known, before its width is.</summary>
/// <param name="Name">Its name in the drill.</param>
/// <param name="Centre">Its middle: on the lane, board 0.5 to 39.5.</param>
/// <param name="Distance">Feet past the foul line, 0 to 60.</param>
public sealed record ResolvedTarget(string Name, Board Centre, Feet Distance);
