using System.Text;
using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

public sealed class LaneSurfaceTests
{
    private static readonly string _flat = string.Join(", ", Enumerable.Repeat("5", 39));

    [Fact]
    public void InventedHouse_IsTheMapOfTheReference()
    {
        var (house, map) = (InventedLane.House(), PathCases.Lane("house40"));
        Assert.Equal(40, house.PatternFeet);
        for (var feet = 0.0; feet <= 60; feet += 1.7)
        {
            for (var board = 0.5; board <= 39.5; board += 0.4)
            {
                Assert.Equal(map.OilAt(feet, board), house.OilAt(feet, board), 1e-4);
                Assert.Equal(map.FrictionAt(feet, board), house.FrictionAt(feet, board), 1e-5);
            }
        }
    }

    [Fact]
    public void FrictionAt_AnyPlace_FollowsTheLaw()
    {
        for (var seed = 0UL; seed < 300; seed++)
        {
            var lane = RandomThrow.From(seed).Lane;
            for (var feet = 0.3; feet < 60; feet += 3.7)
            {
                var board = 40 * SeededRandom.Unit(seed, (ulong)(feet * 10));
                var law = lane.DryFriction + ((lane.OilFriction - lane.DryFriction) * (1 - Math.Exp(-lane.OilAt(feet, board) / lane.OilScaleUnits)));
                Assert.Equal(law, lane.FrictionAt(feet, board), 1e-12);
            }
        }
    }

    [Fact]
    public void FromPasses_OverlappingPasses_AddUp()
    {
        var lane = new LaneSurface(
            OilPattern.FromPasses([new OilPass(2, 38, 0, 40, 5, 5), new OilPass(10, 30, 0, 20, 30, 10)]), 0.2, 0.03, 6);
        foreach (var (feet, board, units) in ((double, double, double)[])[(0, 5, 5), (0, 20, 35), (10, 20, 25), (19.9999999, 20, 15), (30, 20, 5), (41, 20, 0), (10, 1, 0)])
        {
            Assert.Equal(units, lane.OilAt(feet, board), 1e-6);
        }

        Assert.Equal(40, lane.PatternFeet);
    }

    [Fact]
    public void Read_Passes_IsTheSameLane()
    {
        var read = Read("""
            { "mu_dry": 0.2, "mu_oil": 0.03, "u0": 6, "pattern_length_ft": 40, "passes": [
              { "from_board": 2, "to_board": 38, "start_ft": 0, "end_ft": 40, "units": 5 },
              { "from_board": 10, "to_board": 30, "start_ft": 0, "end_ft": 20, "units": 30, "end_units": 10 } ] }
            """);
        Assert.Empty(read.Problems);
        var made = OilPattern.FromPasses([new OilPass(2, 38, 0, 40, 5, 5), new OilPass(10, 30, 0, 20, 30, 10)]);
        Assert.Equal(made, read.Value!.Surface.Oil, (one, other) => one.AsEnumerable().SequenceEqual(other));
        Assert.Null(read.Value.Wear);
    }

    [Theory]
    [InlineData("""{ "mu_dry": 0.2, "mu_oil": 0.03, "u0": 6, "rows": [] }""", "$.rows: found a list of 0; allowed: a list of 1 to 200 rows, each a distance and 39 boards")]
    [InlineData("""{ "mu_dry": 0.2, "mu_oil": 0.03, "u0": 6, "passes": [] }""", "$.passes: found a list of 0")]
    [InlineData("""{ "mu_dry": 0.2, "mu_oil": 0.03, "u0": 6 }""", "found none of mu, rows, passes; allowed: exactly one of them")]
    [InlineData("""{ "mu_dry": 0.2, "mu_oil": 0.03, "u0": 6, "rows": [{ "x_ft": 0, "oil": [1, 2] }] }""", "$.rows[0].oil: found a list of 2; allowed: a list of 39 to 39 numbers")]
    [InlineData(
        """{ "mu_dry": 0.2, "mu_oil": 0.03, "u0": 6, "rows": [{ "x_ft": 10, "oil": [FLAT] }, { "x_ft": 9, "oil": [FLAT] }] }""",
        "$.rows[1].x_ft: found 9; allowed: rows in rising order of distance: more than 10")]
    [InlineData("""{ "mu": -0.1 }""", "$.mu: found -0.1; allowed: a number, 0 to 0.6")]
    [InlineData("""{ "mu": NaN }""", "x.json:1")]
    [InlineData(
        """{ "mu_dry": 0.2, "mu_oil": 0.03, "u0": 6, "pattern_length_ft": 40, "rows": [{ "x_ft": 0, "oil": [FLAT] }] }""",
        "found 40; allowed: 60, where the last oil ends; or leave it out")]
    [InlineData("""{ "mu": 0.1, "pattern_length_ft": 90 }""", "$.pattern_length_ft: found 90; allowed: a number, 0 to 60")]
    [InlineData(
        """{ "mu_dry": 0.2, "mu_oil": 0.03, "u0": 6, "pattern_length_ft": 41, "passes": [{ "from_board": 2, "to_board": 38, "start_ft": 0, "end_ft": 40, "units": 5 }] }""",
        "found 41; allowed: 40, where the last oil ends; or leave it out")]
    [InlineData(
        """{ "mu_dry": 0.2, "mu_oil": 0.03, "u0": 6, "passes": [{ "from_board": 20, "to_board": 3, "start_ft": 0, "end_ft": 40, "units": 5 }] }""",
        "$.passes[0].to_board: found 3; allowed: 20 to 39: not before from_board")]
    [InlineData(
        """{ "mu_dry": 0.2, "mu_oil": 0.03, "u0": 6, "passes": [{ "from_board": 2, "to_board": 3, "start_ft": 9, "end_ft": 9, "units": 5 }] }""",
        "$.passes[0].end_ft: found 9; allowed: more than start_ft, 9")]
    public void Read_BadLane_IsRefusedWithPlaceAndRange(string json, string message)
    {
        var read = Read(json.Replace("FLAT", _flat, StringComparison.Ordinal));
        Assert.Null(read.Value);
        Assert.Contains(read.Problems.AsEnumerable(), problem => problem.ToString().Contains(message, StringComparison.Ordinal));
    }

    [Fact]
    public void Read_DryLaneAndNoFriction_AreLanes()
    {
        Assert.Equal(0, Read("""{ "mu": 0 }""").Value!.Surface.FrictionAt(30, 20));
        var dry = Read("""{ "mu_dry": 0.2, "mu_oil": 0.03, "u0": 6, "rows": [{ "x_ft": 0, "oil": [FLAT] }] }""".Replace("FLAT", _flat.Replace('5', '0'), StringComparison.Ordinal));
        Assert.Equal(0.2, dry.Value!.Surface.FrictionAt(10, 20), 1e-15);
        Assert.Null(dry.Value.Surface.PatternFeet);
    }

    [Fact]
    public void New_BadStretches_AreRefused()
    {
        var row = new double[39].ToValueList();
        Assert.Throws<ArgumentException>(() => new LaneSurface([new OilStretch(0, 30, row, row)], 0.2, 0.03, 6));
        Assert.Throws<ArgumentException>(() => new LaneSurface([new OilStretch(0, 30, row, row), new OilStretch(31, 60, row, row)], 0.2, 0.03, 6));
        Assert.Throws<ArgumentException>(() => new LaneSurface([new OilStretch(0, 60, row, [1, 2])], 0.2, 0.03, 6));
        Assert.Throws<ArgumentException>(() => new LaneSurface([new OilStretch(0, 60, row, Enumerable.Repeat(double.NaN, 39).ToValueList())], 0.2, 0.03, 6));
        Assert.Throws<ArgumentException>(() => new LaneSurface(OilPattern.None, double.NaN, 0.03, 6));
        Assert.Throws<ArgumentException>(() => OilPattern.FromRows([], false));
        Assert.Throws<ArgumentException>(() => OilPattern.FromPasses([]));
    }

    [Fact]
    public void After_AShot_TakesOilAlongItsTrackOnly()
    {
        var lane = InventedLane.House();
        var path = Paths.Trace(lane, Ball.Usual, new Release(Hand.Left, 22, 2.6, 8, 350));
        var worn = new Wear(0.1, 1.5).After(lane, path);
        for (var feet = 2.0; feet < 40; feet += 4)
        {
            var track = (int)Math.Round(40 - path.At(feet).Board);
            Assert.InRange(worn.OilAt(feet, track), lane.OilAt(feet, track) * 0.88, lane.OilAt(feet, track) * 0.94);
        }

        // 20 boards away nothing is taken; on no shot nothing is taken.
        Assert.Equal(lane.OilAt(10, 5), worn.OilAt(10, 5), 1e-6);
        Assert.Equal(lane.OilAt(33, 12), new Wear(0, 1.5).After(lane, path).OilAt(33, 12), 1e-9);
        Assert.Equal(40, worn.PatternFeet);
    }

    [Fact]
    public void After_ManyShots_BallsHookEarlier()
    {
        var release = new Release(Hand.Right, 22, 2.6, 8, 350) { AxisTiltDegrees = 12 };
        var (lane, wear) = (InventedLane.House(), new Wear(0.05, 1.5));
        var before = Paths.Trace(lane, Ball.Usual, release).End;
        for (var shot = 0; shot < 30; shot++)
        {
            lane = wear.After(lane, Paths.Trace(lane, Ball.Usual, release));
        }

        var after = Paths.Trace(lane, Ball.Usual, release).End;
        Assert.True(after.BoardAt60 > before.BoardAt60 + 1);
        Assert.True(after.RollFeet < before.RollFeet);
    }

    private static FileRead<LaneSurfaceFile> Read(string json) => LaneSurfaceReader.Read("x.json", Encoding.UTF8.GetBytes(json));
}
