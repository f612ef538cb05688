using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>Takes a bowler out of everything: lanes that still show the name, the record, groups, what was agreed, and the audit's lines.</summary>
public sealed class BowlerErasing(IReadOnlyList<Station> stations, IRecordErasure record, PeopleRegister people, GroupRegister groups, ConsoleSettings settings, TimeProvider clock)
{
    /// <summary>Erases a bowler.</summary>
    /// <returns>What was erased; null when nothing was kept of the name; or why it is not possible now.</returns>
    public async Task<(Erased? Erased, string? Why)> EraseAsync(string bowler, CancellationToken cancellationToken)
    {
        foreach (var station in stations)
        {
            if (await station.ForgetAsync(bowler, cancellationToken).ConfigureAwait(false) is StationReply.Refused refused)
            {
                return (null, refused.Why);
            }
        }

        var known = people.Find(bowler) is not null || groups.All.AsEnumerable().Any(group => group.Find(bowler) is not null);
        var (erased, why) = await record.EraseBowlerAsync(bowler, cancellationToken).ConfigureAwait(false);
        if (why is not null)
        {
            return (null, why);
        }

        // After the record: were it refused or away, nothing should have gone by halves.
        groups.Remove(bowler);
        people.Remove(bowler);
        AuditScrub.Names(settings.DataFolder, bowler);
        return (erased ?? (known ? new Erased("none-in-record", clock.GetUtcNow(), [], []) : null), null);
    }
}
