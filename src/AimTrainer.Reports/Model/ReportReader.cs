using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>Reads what a report needs from the record, in memory that does not grow with the record.</summary>
/// <param name="practice">Sums and newest crossings.</param>
/// <param name="sessions">The newest session's lane.</param>
/// <param name="clock">When the report is made.</param>
public sealed class ReportReader(IPracticeRecord practice, ISessionStore sessions, TimeProvider clock)
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
        var newest = found.Sessions.Count == 0 ? null
            : await sessions.FindAsync(found.Sessions[^1].SessionId, cancellationToken).ConfigureAwait(false);
        return ReportBuilder.Build(found, crossings, newest?.Setup.Lane ?? LaneProfileReader.Default, filter, clock.GetUtcNow());
    }
}
