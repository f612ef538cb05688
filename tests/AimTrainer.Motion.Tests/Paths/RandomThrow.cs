using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

/// <summary>A lane, a ball and a release made from a seed; wider than what people do.</summary>
internal sealed record RandomThrow(LaneSurface Lane, LaneSurface Mirrored, Ball Ball, Release Release)
{
    public static RandomThrow From(ulong seed)
    {
        var position = 0UL;
        double Between(double low, double high) => low + ((high - low) * SeededRandom.Unit(seed, position++));

        var ball = new Ball
        {
            MassKilograms = Between(3, 7.2),
            RadiusMetres = Between(0.1075, 0.1095),
            RadiusOfGyrationMetres = Between(2.4, 2.8) * Ball.MetresPerInch,
            Grip = Between(0.7, 1.5),
        };
        var release = new Release(Between(0, 1) < 0.5 ? Hand.Right : Hand.Left, Between(3, 37), Between(-1, 4), Between(5, 10), Between(0, 650))
        {
            AxisRotationDegrees = Between(0, 90),
            AxisTiltDegrees = Between(0, 40),
            LaydownFeet = Between(0, 1) < 0.3 ? 0 : Between(0, 4),
        };
        var (dry, oiled) = (Between(0.12, 0.3), Between(0.0, 0.06));
        var kind = Between(0, 1);
        var oil = kind < 0.2 ? OilPattern.None : kind < 0.9 ? Rows(Between, kind < 0.3) : OilPattern.FromPasses(
        [
            new OilPass(2, 38, 0, Between(20, 45), Between(0, 12), Between(0, 12)),
            new OilPass(10, 30, Between(0, 10), Between(25, 40), Between(5, 40), Between(0, 20)),
        ]);
        var (scale, width) = (Between(2, 12), Between(41, 42));
        LaneSurface Lane(ValueList<OilStretch> pattern) => new(pattern, dry, oiled, scale, 15, width);
        return new RandomThrow(Lane(oil), Lane(Mirror(oil)), ball, release);
    }

    public BallPath Trace() => Paths.Trace(Lane, Ball, Release);

    private static ValueList<OilStretch> Rows(Func<double, double, double> between, bool inSteps)
    {
        var feet = 0.0;
        var rows = new List<(double Feet, ValueList<double> Oil)>();
        for (var i = 0; i < 4; i++)
        {
            rows.Add((feet, Enumerable.Range(0, LaneProfile.BoardCount).Select(_ => between(0, 60)).ToValueList()));
            feet += between(4, 14);
        }

        rows.Add((feet, new double[LaneProfile.BoardCount].ToValueList()));
        return OilPattern.FromRows(rows, inSteps);
    }

    private static ValueList<OilStretch> Mirror(ValueList<OilStretch> oil) => oil.AsEnumerable()
        .Select(one => one with { Start = one.Start.AsEnumerable().Reverse().ToValueList(), End = one.End.AsEnumerable().Reverse().ToValueList() }).ToValueList();
}
