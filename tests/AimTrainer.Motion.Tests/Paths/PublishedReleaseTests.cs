using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

/// <summary>
/// The release of the 2025 paper as a consistency check, not a validation: only summaries of it were read, its frictions are not known, and one
/// friction is fitted here so that the ball meets the head pin where they say.
/// Source: Ji, Yang, Hooper et al., "Using physics simulations to find targeting strategies in competitive tenpin bowling", AIP
/// Advances 2025, by its summaries: 17.9 mph, 416 rpm, 45 degrees of rotation, 1.8 degrees outward from the 28th board from the left, oil
/// over two thirds of the lane; best about 6 degrees and 6 cm off the middle of the head pin. Fitted figures: physics reference, section 7.
/// </summary>
public sealed class PublishedReleaseTests
{
    private static readonly Ball _ball = Ball.Usual with { RadiusMetres = 0.108585, RadiusOfGyrationMetres = 0.0635 };

    [Fact]
    public void Trace_PublishedRelease_FitsOrdinaryFrictions()
    {
        // 28 from the left is 12 from the right for a right-hander. Ball 6.0 cm off the middle of the head pin: board 17.78.
        var (low, high) = (0.005, 0.06);
        for (var i = 0; i < 50; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Thrown(middle).ContactBoard < 20 - (0.06 / (1.0541 / 39)) ? (middle, high) : (low, middle);
        }

        var end = Thrown(low);
        Assert.Equal(0.0262, low, 5e-5);
        Assert.Equal(4.537913, end.BreakpointBoard, 2e-3);
        Assert.Equal(40.1684, end.BreakpointFeet, 1e-2);
        Assert.Equal(18.325458, end.BoardAt60, 2e-3);
        Assert.Equal(5.329041, end.AngleAt60Degrees, 1e-6);
        Assert.Equal(2.413310, end.EndSeconds, 1e-4);

        // Not fitted: about 6 degrees are published.
        Assert.InRange(end.AngleAt60Degrees, 5, 6.5);
    }

    [Theory]
    [InlineData(0.01, 26.3)]
    [InlineData(0.02, 31.3)]
    [InlineData(0, 21.1)]
    public void Trace_TheOtherReading_EndsFarFromThePocket(double oilFriction, double board)
    {
        // Read as board 28 from the right it needs an almost frictionless oil zone: same source.
        var end = Paths.Trace(Lane(oilFriction), _ball, new Release(Hand.Right, 28, 1.8, 17.9 * 0.44704, 416)).End;
        Assert.Equal(board, end.BoardAt60, 0.1);
    }

    private static PathEnd Thrown(double oilFriction) => Paths.Trace(Lane(oilFriction), _ball, new Release(Hand.Right, 12, 1.8, 17.9 * 0.44704, 416)).End;

    private static LaneSurface Lane(double oilFriction)
    {
        var much = Enumerable.Repeat(1e9, LaneProfile.BoardCount).ToValueList();
        return new LaneSurface(OilPattern.FromRows([(0, much), (40, new double[LaneProfile.BoardCount].ToValueList())], true), 0.20, oilFriction, 1);
    }
}
