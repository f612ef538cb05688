namespace AimTrainer.Reports;

/// <summary>The latest ten measured shots in a row of one session.</summary>
/// <param name="At">When the session's first of these shots came in.</param>
/// <param name="SpreadBoards">Highest less lowest, ball centre to ball centre.</param>
public sealed record ReportTen(DateTimeOffset At, double SpreadBoards);
