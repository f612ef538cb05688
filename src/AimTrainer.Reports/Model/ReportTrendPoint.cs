namespace AimTrainer.Reports;

/// <summary>One session's test in the trend.</summary>
/// <param name="Session">Its number in the series, from 1.</param>
/// <param name="At">When it began.</param>
/// <param name="Shots">Test shots whose crossing is known.</param>
/// <param name="SpreadBoards">Their spread about the targets' own means, as the trend takes it.</param>
/// <param name="SpreadLowBoards">Lower 95 % limit by chi-square; null when all readings agree.</param>
/// <param name="SpreadHighBoards">Upper limit; null likewise.</param>
/// <param name="TrendBoards">The trend's line there; null below two sessions.</param>
/// <param name="TrendLowBoards">Lower edge of the 95 % band of the line; null below three sessions.</param>
/// <param name="TrendHighBoards">Upper edge; null likewise.</param>
public sealed record ReportTrendPoint(
    int Session,
    DateTimeOffset At,
    int Shots,
    double SpreadBoards,
    double? SpreadLowBoards,
    double? SpreadHighBoards,
    double? TrendBoards,
    double? TrendLowBoards,
    double? TrendHighBoards);
