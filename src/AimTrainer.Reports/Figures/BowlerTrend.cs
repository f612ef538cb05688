using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>Whether a bowler is getting better, with every figure: what <c>trend --json</c> prints.</summary>
/// <param name="Bowler">Whose.</param>
/// <param name="Hand">The hand; boards count from its edge.</param>
/// <param name="Simulated">Whether every shot is invented.</param>
/// <param name="Sessions">Sessions of the period.</param>
/// <param name="Shots">Shots that count in them.</param>
/// <param name="Visits">Visits: sessions near in time count as one.</param>
/// <param name="OtherHandSessions">Sessions with the other hand, left out.</param>
/// <param name="CutOff">Whether older practice was left out for its amount.</param>
/// <param name="PeriodChosen">Whether somebody chose the period.</param>
/// <param name="Series">One a place, the one with most points first.</param>
/// <param name="Program">A program against the record; null without one.</param>
public sealed record BowlerTrend(
    string Bowler, Hand Hand, bool Simulated, int Sessions, int Shots, int Visits, int OtherHandSessions, bool CutOff, bool PeriodChosen,
    ValueList<TrendSeriesFigures> Series, ProgramView? Program)
{
    /// <summary>The trends of a practice.</summary>
    /// <param name="practice">The practice.</param>
    /// <param name="record">Its tests.</param>
    /// <param name="periodChosen">Whether somebody chose the period.</param>
    /// <param name="program">A program, when there is one.</param>
    public static BowlerTrend Of(BowlerPractice practice, TestRecord record, bool periodChosen, ProgramView? program) => new(
        practice.Bowler,
        practice.Hand,
        practice.Simulated,
        practice.Sessions.Count,
        practice.Sessions.AsEnumerable().Sum(session => session.Shots),
        record.Visits.Count,
        practice.OtherHandSessions,
        practice.CutOff,
        periodChosen,
        record.Series.Select(series => TrendSeriesFigures.Of(series, record.Kinds)).ToValueList(),
        program);
}
