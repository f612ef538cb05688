namespace AimTrainer.Sessions;

/// <summary>One entry in the history of a ball's surface.</summary>
/// <param name="At">When it was done or measured.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Finish">After work: grit or finish, in the bowler's words.</param>
/// <param name="Roughness">Of a scan: the number that the meter showed.</param>
/// <param name="RoughnessUnit">Of a scan: the unit that the meter showed.</param>
/// <param name="Games">Games since the work before, when they were known.</param>
/// <param name="Note">Anything else.</param>
public sealed record BallSurface(
    DateTimeOffset At, BallSurfaceKind Kind, string? Finish, double? Roughness, string? RoughnessUnit, int? Games, string? Note);
