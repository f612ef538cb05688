using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

/// <summary>
/// An invented bowler whose causes of misses are known, with the settings of the simulated bowler of the feeds: laydown and angle off by a bias
/// and a normal scatter, readings off by noise. Here the ball also moves beyond the straight part, by an amount that hangs on speed and revs, and
/// the angle may make up for the laydown.
/// </summary>
internal sealed record ModelBowler
{
    public double LaydownBias { get; init; }

    public double LaydownSpread { get; init; } = 0.7;

    /// <summary>Degrees, positive outward.</summary>
    public double AngleBias { get; init; }

    public double AngleSpread { get; init; } = 0.35;

    /// <summary>Boards a foot that the slope takes back of each board of laydown error.</summary>
    public double Compensation { get; init; }

    public double Bend { get; init; }

    public double BendSpread { get; init; }

    public double BendPerMph { get; init; }

    public double BendPerRpm { get; init; }

    public double SpeedSpread { get; init; } = 0.4;

    public double RevsSpread { get; init; } = 12;

    public double Noise { get; init; } = 0.1;

    /// <summary>A shot at a line that is straight from (near) to (far) but for the bend.</summary>
    public ObservedShot Throw(Chance chance, int number, (double Board, double Feet) near, (double Board, double Feet) far, LaneProfile lane)
    {
        var slope = (far.Board - Bend - near.Board) / (far.Feet - near.Feet);
        var meant = near.Board - (slope * near.Feet);
        var off = LaydownSpread * chance.Normal();
        var laydown = meant + LaydownBias + off;
        var degrees = StraightLine.DegreesOf(slope, lane) + AngleBias + (AngleSpread * chance.Normal());
        var left = StraightLine.SlopeOf(degrees, lane) - (Compensation * off);
        var (mph, rpm) = (17 + (SpeedSpread * chance.Normal()), 300 + (RevsSpread * chance.Normal()));
        var bend = Bend + (BendPerMph * (mph - 17)) + (BendPerRpm * (rpm - 300)) + (BendSpread * chance.Normal());
        return MadeShots.Shot(
            laydown + (Noise * chance.Normal()),
            [(near.Feet, laydown + (left * near.Feet) + (Noise * chance.Normal())), (far.Feet, laydown + (left * far.Feet) + bend + (Noise * chance.Normal()))],
            mph,
            rpm).At(number, near, far);
    }
}
