using AimTrainer.Domain;
using AimTrainer.Motion;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>A bowler's usual throw and scatter from the newest sessions of the record; for the console and for <c>aimtrainer aim</c>.</summary>
/// <param name="Recorded">What their shots tell; null when no session of this bowler is stored.</param>
/// <param name="Simulated">Whether the shots are simulated: real and simulated ones are never mixed, the newest session decides.</param>
public sealed record BowlerScatter(RecordedBowler? Recorded, bool Simulated)
{
    /// <summary>Newest sessions that are looked at.</summary>
    private const int MostSessions = 20;

    /// <summary>Reads it.</summary>
    /// <param name="store">The record.</param>
    /// <param name="bowler">The bowler's name.</param>
    /// <param name="rotationDegrees">Axis rotation for when the record has none.</param>
    /// <param name="tiltDegrees">Axis tilt likewise.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    public static async Task<BowlerScatter> ReadAsync(
        ISessionStore store, string bowler, double? rotationDegrees, double? tiltDegrees, CancellationToken cancellationToken)
    {
        var listed = await store.ListAsync(new SessionFilter { Bowler = bowler, Limit = MostSessions }, cancellationToken).ConfigureAwait(false);
        if (listed.Count == 0)
        {
            return new BowlerScatter(null, false);
        }

        var simulated = listed.AsEnumerable().All(session => session.Simulated);
        Hand? hand = null;
        var lines = new List<(IEnumerable<Shot>, LaneProfile)>();
        foreach (var session in listed.AsEnumerable().Where(session => session.Simulated == simulated))
        {
            if (await store.FindAsync(session.SessionId, cancellationToken).ConfigureAwait(false) is not { } stored)
            {
                continue;
            }

            hand ??= stored.Setup.Hand;
            if (stored.Setup.Hand == hand)
            {
                var shots = await PlanShots.ReadAsync(store, session.SessionId, cancellationToken).ConfigureAwait(false);
                lines.AddRange(shots.Where(shot => shot.Targets.Count > 0).GroupBy(PlanShots.Line).Select(line => (line.Select(shot => shot.Shot), stored.Setup.Lane)));
            }
        }

        return new BowlerScatter(RecordedThrows.Of(lines, hand ?? Hand.Right, rotationDegrees, tiltDegrees), simulated);
    }
}
