using AimTrainer.Domain;
using AimTrainer.Motion;
using AimTrainer.Output;
using AimTrainer.Reports;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>A bowler's usual throw and scatter from the record: how shots at one line differ from each other, over all lines.</summary>
internal static class AimRecord
{
    /// <summary>Newest sessions that are looked at.</summary>
    private const int MostSessions = 20;

    /// <summary>Fewest shots, less one for each line, from which a scatter is told.</summary>
    private const int FewestShots = 20;

    /// <summary>Keeps correlations from few shots away from what no scatter can have.</summary>
    private const double TrustInCorrelations = 0.95;

    private static readonly string[] _names = ["laydown", "launch angle", "speed at release", "revs"];

    /// <summary>Reads it.</summary>
    /// <param name="store">The record.</param>
    /// <param name="bowler">The bowler's name.</param>
    /// <param name="rotation">Axis rotation when the record has none.</param>
    /// <param name="tilt">Axis tilt when the record has none.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    /// <returns>The bowler, how many shots that is, and whether they are simulated.</returns>
    public static async Task<(AimBowler Bowler, int Shots, bool Simulated)> ReadAsync(
        ISessionStore store, string bowler, double? rotation, double? tilt, CancellationToken cancellationToken)
    {
        var listed = await store.ListAsync(new SessionFilter { Bowler = bowler, Limit = MostSessions }, cancellationToken).ConfigureAwait(false);
        if (listed.Count == 0)
        {
            throw new UserException($"{bowler}: no such file, and no session of this bowler is stored here; see: aimtrainer sessions list");
        }

        var simulated = listed.AsEnumerable().All(session => session.Simulated);
        Hand? hand = null;
        var lines = new List<List<double[]>>();
        var (rotations, tilts) = (new List<double>(), new List<double>());
        foreach (var session in listed.AsEnumerable().Where(session => session.Simulated == simulated))
        {
            var stored = (await store.FindAsync(session.SessionId, cancellationToken).ConfigureAwait(false))!;
            hand ??= stored.Setup.Hand;
            if (stored.Setup.Hand != hand)
            {
                continue;
            }

            var record = await SessionReader.RecordAsync(store, session.SessionId, cancellationToken).ConfigureAwait(false);
            foreach (var line in SessionLine.Of(stored.Setup, record))
            {
                lines.Add([.. line.Shots.Select(shot => Throw(shot.Shot.Shot, stored.Setup.Lane)).OfType<double[]>()]);
                rotations.AddRange(line.Shots.Select(shot => shot.Shot.Shot.AxisRotation?.Value).OfType<double>());
                tilts.AddRange(line.Shots.Select(shot => shot.Shot.Shot.AxisTilt?.Value).OfType<double>());
            }
        }

        lines.RemoveAll(line => line.Count < 2);
        var freedom = lines.Sum(line => line.Count - 1);
        if (freedom < FewestShots)
        {
            throw new UserException(
                $"{bowler}: {freedom} shots of the record, less one a line, tell of the scatter of {string.Join(", ", _names)} together; needed: {FewestShots}. "
                + "Give a bowler file instead (docs/motion.md)");
        }

        var turned = rotation ?? (rotations.Count > 0 ? Math.Clamp(rotations.Average(), -90, 90) : throw new UserException(
            $"{bowler}: the record has no axis rotation; give it with --axis-rotation"));
        var all = lines.SelectMany(line => line).ToList();
        return (new AimBowler(hand!.Value, all.Average(one => one[2]), all.Average(one => one[3]), turned, Pooled(lines, freedom))
        {
            AxisTiltDegrees = tilt ?? (tilts.Count > 0 ? Math.Clamp(tilts.Average(), 0, 90) : 0),
        }, all.Count, simulated);
    }

    private static double[]? Throw(Shot shot, LaneProfile lane) =>
        shot.Laydown is { } laydown && LaunchAngles.Of(shot, lane) is { } angle && shot.Speed is { Place: SpeedPlace.Release } speed && shot.Revs is { } revs
            ? [laydown.Boards, angle.Angle.Value, speed.Value.Value, revs.Value]
            : null;

    private static Scatter Pooled(List<List<double[]>> lines, int freedom)
    {
        var covariance = new double[Scatter.Parts, Scatter.Parts];
        foreach (var line in lines)
        {
            var mean = Enumerable.Range(0, Scatter.Parts).Select(i => line.Average(one => one[i])).ToArray();
            foreach (var one in line)
            {
                for (var i = 0; i < Scatter.Parts; i++)
                {
                    for (var j = 0; j < Scatter.Parts; j++)
                    {
                        covariance[i, j] += (one[i] - mean[i]) * (one[j] - mean[j]) / freedom;
                    }
                }
            }
        }

        var spreads = Enumerable.Range(0, Scatter.Parts).Select(i => Math.Sqrt(covariance[i, i])).ToValueList();
        var correlations = Enumerable.Range(0, Scatter.Parts * Scatter.Parts).Select(at =>
        {
            var (i, j) = (at / Scatter.Parts, at % Scatter.Parts);
            return i == j ? 1 : spreads[i] * spreads[j] > 0 ? TrustInCorrelations * covariance[i, j] / (spreads[i] * spreads[j]) : 0;
        }).ToValueList();
        try
        {
            return Scatter.Of(spreads, correlations);
        }
        catch (ArgumentException exception)
        {
            throw new UserException($"the record's scatter cannot be used: {exception.Message}; give a bowler file instead (docs/motion.md)");
        }
    }
}
