using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

/// <summary>A lane with known numbers, and shots thrown on it that a noisy sensor saw: all from a seed.</summary>
internal sealed class FittedLane
{
    private readonly ulong _seed;
    private ulong _position;

    public FittedLane(ulong seed)
    {
        _seed = seed;
        Numbers = new LaneNumbers(Between(0.02, 0.05), Between(0.15, 0.25), Between(36, 44));
    }

    public LaneNumbers Numbers { get; }

    public IReadOnlyList<double> Feet { get; init; } = [0, 15, 40, 50, 60];

    public double Noise { get; init; } = 0.25;

    public double SpreadOfLines { get; init; } = 1;

    public double RevsNoise { get; init; }

    public SpeedPlace SpeedPlace { get; init; } = SpeedPlace.Release;

    public Hand Hand { get; init; } = Hand.Right;

    public IReadOnlyList<FitShot> Shots(int count)
    {
        var lane = Numbers.On(InventedLane.House());
        var shots = new List<FitShot>();
        while (shots.Count < count)
        {
            var release = new Release(
                Hand,
                21 + (SpreadOfLines * Between(-5, 5)),
                2.3 + (SpreadOfLines * Between(-1.2, 0.8)),
                7.8 + (SpreadOfLines * Between(-0.6, 0.6)),
                340 + (SpreadOfLines * Between(-60, 60)))
            { AxisRotationDegrees = 45, AxisTiltDegrees = 12 };
            var path = Paths.Trace(lane, Ball.Usual, release);
            if (path.End.Finish == PathFinish.Gutter)
            {
                continue;
            }

            var boards = Feet.Select(feet => new MeasuredBoard(feet, path.At(feet).Board + (Noise * Normal()))).ToValueList();
            if (boards.AsEnumerable().Any(board => board.Board is < 0.5 or > 39.5))
            {
                continue;
            }

            var mps = SpeedPlace == SpeedPlace.Release ? release.SpeedMetresPerSecond : path.End.EndMetresPerSecond;
            shots.Add(new FitShot(Hand, boards, mps / Release.MetresPerSecondPerMph, release.RevsRpm + (RevsNoise * Normal()), 45)
            {
                AxisTiltDegrees = 12,
                SpeedPlace = SpeedPlace,
                RevsSpreadRpm = RevsNoise,
            });
        }

        return shots;
    }

    private double Between(double low, double high) => low + ((high - low) * SeededRandom.Unit(_seed, _position++));

    private double Normal() => StandardNormal.Quantile(Math.Max(SeededRandom.Unit(_seed, _position++), 1e-12));
}
