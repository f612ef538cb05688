using AimTrainer.Analysis;
using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>Reads a bowler's trend and figures from the record, in memory that does not grow with the record.</summary>
/// <param name="practice">Sums, newest crossings and their lanes.</param>
/// <param name="clock">What day it is.</param>
public sealed class ProgressReader(IPracticeRecord practice, TimeProvider clock)
{
    /// <summary>A bowler's trend, or null when the record knows no such bowler.</summary>
    /// <param name="filter">Whose, and when.</param>
    /// <param name="plan">A program to hold it against; null without one.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    public async Task<BowlerTrend?> TrendAsync(PracticeFilter filter, PracticePlan? plan, CancellationToken cancellationToken) =>
        await practice.FindPracticeAsync(filter, cancellationToken).ConfigureAwait(false) is { } found ? TrendOf(found, filter, plan) : null;

    /// <summary>A bowler's figures, or null when the record knows no such bowler.</summary>
    /// <param name="filter">Whose, and when.</param>
    /// <param name="by">Apart by this; null for everything.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    public async Task<BowlerFigures?> FiguresAsync(PracticeFilter filter, Grouping? by, CancellationToken cancellationToken)
    {
        if (await practice.FindPracticeAsync(filter, cancellationToken).ConfigureAwait(false) is not { } found)
        {
            return null;
        }

        var crossings = await practice.LastCrossingsAsync(filter, BowlerFigures.MostShots, cancellationToken).ConfigureAwait(false);
        var lanes = await ReportReader.LanesAsync(practice, found, [], cancellationToken).ConfigureAwait(false);
        return BowlerFigures.Of(found, crossings, lanes.Newest, filter, by);
    }

    /// <summary>Report, trend and figures at once, or null when the record knows no such bowler.</summary>
    /// <param name="filter">Whose, and when.</param>
    /// <param name="plan">A program to hold the record against; null without one.</param>
    /// <param name="by">Figures apart by this; null for everything.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    public async Task<BowlerProgress?> AllAsync(PracticeFilter filter, PracticePlan? plan, Grouping? by, CancellationToken cancellationToken)
    {
        if (await practice.FindPracticeAsync(filter, cancellationToken).ConfigureAwait(false) is not { } found)
        {
            return null;
        }

        var crossings = await practice.LastCrossingsAsync(filter, BowlerFigures.MostShots, cancellationToken).ConfigureAwait(false);
        var shots = new HashSet<(string, int)>();
        var newest = crossings.AsEnumerable().TakeWhile(crossing => Counted(crossing) <= LanePicture.MostShots).ToList();
        var lanes = await ReportReader.LanesAsync(practice, found, newest, cancellationToken).ConfigureAwait(false);
        return new BowlerProgress(
            found,
            ReportBuilder.Build(found, newest, lanes, filter, clock.GetUtcNow()),
            TrendOf(found, filter, plan),
            BowlerFigures.Of(found, crossings, lanes.Newest, filter, by));

        int Counted(PracticeCrossing crossing)
        {
            shots.Add((crossing.SessionId, crossing.Number));
            return shots.Count;
        }
    }

    private BowlerTrend TrendOf(BowlerPractice found, PracticeFilter filter, PracticePlan? plan)
    {
        var record = TestRecord.Of(found.Blocks);
        var program = plan is null ? null : ProgramView.Of(plan, record, DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime));
        return BowlerTrend.Of(found, record, filter.From is not null || filter.To is not null, program);
    }
}
