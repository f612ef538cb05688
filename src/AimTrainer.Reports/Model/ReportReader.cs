using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>Reads what a report needs from the record, in memory that does not grow with the record.</summary>
/// <param name="practice">Sums, newest crossings and their lanes.</param>
/// <param name="clock">When the report is made.</param>
public sealed class ReportReader(IPracticeRecord practice, TimeProvider clock)
{
    /// <summary>A bowler's report, or null when the record knows no such bowler.</summary>
    /// <param name="filter">Whose, and when.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    public async Task<BowlerReport?> ReadAsync(PracticeFilter filter, CancellationToken cancellationToken)
    {
        if (await practice.FindPracticeAsync(filter, cancellationToken).ConfigureAwait(false) is not { } found)
        {
            return null;
        }

        var crossings = await practice.LastCrossingsAsync(filter, LanePicture.MostShots, cancellationToken).ConfigureAwait(false);
        return ReportBuilder.Build(found, crossings, await LanesAsync(practice, found, crossings, cancellationToken).ConfigureAwait(false), filter, clock.GetUtcNow());
    }

    /// <summary>The lanes of the newest session and of those that crossings are from.</summary>
    internal static async Task<ReportLanes> LanesAsync(
        IPracticeRecord practice, BowlerPractice found, IReadOnlyList<PracticeCrossing> crossings, CancellationToken cancellationToken)
    {
        if (found.Sessions.Count == 0)
        {
            return ReportLanes.All(LaneProfileReader.Default);
        }

        var newest = found.Sessions[^1].SessionId;
        var lanes = await practice.FindLanesAsync([.. crossings.Select(crossing => crossing.SessionId).Append(newest).Distinct()], cancellationToken).ConfigureAwait(false);
        return new ReportLanes(lanes.TryGetValue(newest, out var lane) ? lane : LaneProfileReader.Default, lanes);
    }
}
