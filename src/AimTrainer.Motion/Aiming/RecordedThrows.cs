using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>A usual throw and its scatter from observed shots: how shots at one line differ from each other, over all lines.</summary>
public static class RecordedThrows
{
    /// <summary>Fewest shots, less one for each line, from which a scatter is told.</summary>
    public const int FewestShots = 20;

    /// <summary>Keeps correlations from few shots away from what no scatter can have.</summary>
    private const double TrustInCorrelations = 0.95;

    private static readonly ValueList<string> _names = ["laydown", "launch angle", "speed at release", "revs"];

    /// <summary>Works it out.</summary>
    /// <param name="lines">The shots at each line, and the lane that they were thrown on.</param>
    /// <param name="hand">The bowler's hand.</param>
    /// <param name="rotationDegrees">Axis rotation for when no shot has one.</param>
    /// <param name="tiltDegrees">Axis tilt likewise; 0 when null.</param>
    public static RecordedBowler Of(IEnumerable<(IEnumerable<Shot> Shots, LaneProfile Lane)> lines, Hand hand, double? rotationDegrees, double? tiltDegrees)
    {
        var throws = new List<List<double[]>>();
        var (rotations, tilts) = (new List<double>(), new List<double>());
        foreach (var (shots, lane) in lines)
        {
            var all = shots.ToList();
            throws.Add([.. all.Select(shot => Throw(shot, lane)).OfType<double[]>()]);
            rotations.AddRange(all.Select(shot => shot.AxisRotation?.Value).OfType<double>());
            tilts.AddRange(all.Select(shot => shot.AxisTilt?.Value).OfType<double>());
        }

        throws.RemoveAll(line => line.Count < 2);
        var (freedom, used) = (throws.Sum(line => line.Count - 1), throws.SelectMany(line => line).ToList());
        if (freedom < FewestShots)
        {
            return new RecordedBowler(null, used.Count,
                $"{freedom} shots of the record, less one a line, tell of the scatter of {string.Join(", ", _names)} together; needed: {FewestShots}");
        }

        if (rotationDegrees is null && rotations.Count == 0)
        {
            return new RecordedBowler(null, used.Count, RecordedBowler.NoRotation);
        }

        if (Pooled(throws, freedom, out var problem) is not { } scatter)
        {
            return new RecordedBowler(null, used.Count, problem);
        }

        var turned = rotationDegrees ?? Math.Clamp(rotations.Average(), -90, 90);
        return new RecordedBowler(
            new AimBowler(hand, used.Average(one => one[2]), used.Average(one => one[3]), turned, scatter)
            {
                AxisTiltDegrees = tiltDegrees ?? (tilts.Count > 0 ? Math.Clamp(tilts.Average(), 0, 90) : 0),
            },
            used.Count,
            null);
    }

    private static double[]? Throw(Shot shot, LaneProfile lane) =>
        shot.Laydown is { } laydown && LaunchAngles.Of(shot, lane) is { } angle && shot.Speed is { Place: SpeedPlace.Release } speed && shot.Revs is { } revs
            ? [laydown.Boards, angle.Angle.Value, speed.Value.Value, revs.Value]
            : null;

    private static Scatter? Pooled(List<List<double[]>> lines, int freedom, out string? problem)
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
            problem = null;
            return Scatter.Of(spreads, correlations);
        }
        catch (ArgumentException exception)
        {
            problem = $"the record's scatter cannot be used: {exception.Message}";
            return null;
        }
    }
}
