using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>All that a page of a bowler's progress shows, from one reading of the record.</summary>
/// <param name="Practice">The practice of the period.</param>
/// <param name="Report">The page that a coach hands to a bowler.</param>
/// <param name="Trend">Whether the bowler is getting better.</param>
/// <param name="Figures">Accuracy, apart by what was asked for.</param>
public sealed record BowlerProgress(BowlerPractice Practice, BowlerReport Report, BowlerTrend Trend, BowlerFigures Figures);
