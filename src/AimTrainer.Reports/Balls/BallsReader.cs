using System.Text;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>Reads what a comparison of balls needs from the record; a session that is still thrown too.</summary>
/// <param name="store">The record.</param>
/// <param name="clock">When the comparison is made.</param>
public sealed class BallsReader(ISessionStore store, TimeProvider clock)
{
    /// <summary>At most so many sessions are read.</summary>
    public const int MostSessions = 40;

    private const int MostListed = 1000;

    /// <summary>A comparison.</summary>
    /// <param name="question">Which balls and sessions; a bowler or at least one session is named.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    public async Task<BallsAnswer> ReadAsync(BallsQuestion question, CancellationToken cancellationToken)
    {
        var (ids, more, problem) = question.SessionIds.Count > 0
            ? (question.SessionIds.Distinct(StringComparer.Ordinal).ToList(), 0, (string?)null)
            : await ListedAsync(question, cancellationToken).ConfigureAwait(false);
        if (problem is null && ids.Count > MostSessions)
        {
            problem = $"{ids.Count} sessions are named; allowed: up to {MostSessions}";
        }

        var sources = new List<BallsSource>(ids.Count);
        foreach (var id in problem is null ? ids : [])
        {
            if (await store.FindAsync(id, cancellationToken).ConfigureAwait(false) is not { } stored)
            {
                return new BallsAnswer(null, $"session: found {FoundText.Quoted(id)}; allowed: the id of a session (aimtrainer sessions list, or the page of records)");
            }

            if (sources.Count > 0 && !string.Equals(stored.Setup.Bowler, sources[0].Setup.Bowler, StringComparison.OrdinalIgnoreCase))
            {
                return new BallsAnswer(null, $"the sessions are of two bowlers, {sources[0].Setup.Bowler} and {stored.Setup.Bowler}; compare one bowler's balls at a time");
            }

            sources.Add(await SourceAsync(stored, cancellationToken).ConfigureAwait(false));
        }

        return problem is not null ? new BallsAnswer(null, problem) : new BallsAnswer(BallsBuilder.OfRecord(question, sources, more, clock.GetUtcNow()), null);
    }

    private async Task<(List<string> Ids, int More, string? Problem)> ListedAsync(BallsQuestion question, CancellationToken cancellationToken)
    {
        if (string.IsNullOrWhiteSpace(question.Bowler))
        {
            return ([], 0, "no bowler and no session is named; name one of the two");
        }

        var listed = await store.ListAsync(new SessionFilter { Bowler = question.Bowler, Limit = MostListed }, cancellationToken).ConfigureAwait(false);
        var asked = listed.Where(one => one.Shots > 0 && !(one.StartedAt < question.From) && !(one.StartedAt >= question.To)).ToList();
        return listed.Count == 0 ? ([], 0, $"{question.Bowler}: no session of this bowler is stored here")
            : asked.Count == 0 ? ([], 0, $"{question.Bowler}: no session with a shot in this period")
            : (asked.Take(MostSessions).Select(one => one.SessionId).ToList(), Math.Max(0, asked.Count - MostSessions), null);
    }

    private async Task<BallsSource> SourceAsync(StoredSession stored, CancellationToken cancellationToken)
    {
        var builder = new SessionRecordBuilder();
        await foreach (var entry in store.ReadLogAsync(stored.Setup.SessionId, cancellationToken).ConfigureAwait(false))
        {
            builder.Add(entry.Events);
        }

        var drill = DrillReader.Read(stored.Setup.DrillId, Encoding.UTF8.GetBytes(stored.DrillJson)).Value?.Name ?? stored.Setup.DrillId;
        return new BallsSource(stored.Setup, drill, builder.Result());
    }
}
