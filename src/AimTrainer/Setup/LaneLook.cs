using AimTrainer.Domain;
using AimTrainer.Sessions;
using AimTrainer.Store;

namespace AimTrainer.Setup;

/// <summary>What there is of a lane at one look: equal to another when nothing has happened between them.</summary>
/// <param name="Lineup">The order as it is kept; null where one throws alone.</param>
/// <param name="Sessions">The sessions that are shown, and how far their logs go; none when the station never had one.</param>
internal sealed record LaneLook(Lineup? Lineup, ValueList<SessionProgress> Sessions)
{
    /// <summary>A change by people moves the order's number; one look in so many sees it come in between, and the next look sees it whole.</summary>
    private const int Tries = 3;

    /// <summary>Whether all of it is over.</summary>
    public bool IsOver => Sessions.AsEnumerable().All(session => session.Ended);

    /// <summary>Looks.</summary>
    /// <exception cref="StoreUnavailableException">The record or the order cannot be read.</exception>
    public static async Task<LaneLook> AtAsync(IRecordStore store, LineupFiles lineups, int station, CancellationToken cancellationToken)
    {
        for (var tries = 1; ; tries++)
        {
            // The order before the logs: shots that come in between are counted, and their turn is found. A change by people in between
            // would make shots of the new order count in the old one.
            var lineup = lineups.Find(station);
            var look = await AtAsync(store, lineup, station, cancellationToken).ConfigureAwait(false);
            if (tries == Tries || lineups.Find(station)?.Number == lineup?.Number)
            {
                return look;
            }
        }
    }

    private static async Task<LaneLook> AtAsync(IRecordStore store, Lineup? lineup, int station, CancellationToken cancellationToken)
    {
        if (await store.NewestOfStationAsync(station, cancellationToken).ConfigureAwait(false) is not { } newest)
        {
            return new LaneLook(null, []);
        }

        if (lineup is null)
        {
            return new LaneLook(null, [newest]);
        }

        var ids = lineup.Places.AsEnumerable().Select(place => place.SessionId).ToList();
        var found = (await store.AskAsync(record => record.ProgressOfAsync(ids, cancellationToken), cancellationToken).ConfigureAwait(false))
            .ToDictionary(progress => progress.SessionId, StringComparer.Ordinal);

        // An order that is over may lie there still: then whoever came after it throws alone.
        return found.ContainsKey(newest.SessionId) || (newest.Ended && found.Values.Any(session => !session.Ended))
            ? new LaneLook(lineup, ids.Where(found.ContainsKey).Select(id => found[id]).ToValueList())
            : new LaneLook(null, [newest]);
    }
}
