namespace AimTrainer.Reports;

/// <summary>The end of a visit and the start of the next.</summary>
/// <param name="At">When the first of the two visits began.</param>
/// <param name="NextAt">When the next began.</param>
/// <param name="Days">Days between them.</param>
/// <param name="LogChange">Change of the log spread, above 0 when it was larger at the start.</param>
/// <param name="BiasChangeBoards">Change of the mean miss.</param>
public sealed record RetentionPairFigures(DateTimeOffset At, DateTimeOffset NextAt, double Days, double LogChange, double BiasChangeBoards);
