using AimTrainer.Domain;

namespace AimTrainer.Calibration.Tests;

public sealed class CheckPictureTests
{
    [Fact]
    public void Of_WholeLane_EveryFifthBoardEveryFiveFeetAndAllMarks()
    {
        var lines = CheckPicture.Of(LaneProfileReader.Default, LaneStretch.Whole);
        int Count(CheckLineKind kind) => lines.AsEnumerable().Count(line => line.Kind == kind);

        Assert.Equal(
            (2, 7, 1, 12, 7, 10, 8),
            (Count(CheckLineKind.Edge), Count(CheckLineKind.Board), Count(CheckLineKind.FoulLine), Count(CheckLineKind.Distance),
                Count(CheckLineKind.Arrow), Count(CheckLineKind.Dot), Count(CheckLineKind.Downlane)));
        Assert.Equal(["5", "10", "15", "20", "25", "30", "35"], lines.AsEnumerable().Where(line => line.Kind == CheckLineKind.Board).Select(line => line.Label));
        Assert.All(lines, line => Assert.All(line.Points, point =>
        {
            Assert.InRange(point.Down.Value, 0, 60);
            Assert.InRange(point.Across.Value, 0, 41.5);
        }));
    }

    [Fact]
    public void Of_MiddleBoard_LiesInTheMiddleFromEndToEnd()
    {
        var stretch = new LaneStretch(Feet.FromFeet(12.3), Feet.FromFeet(40), default, default);
        var line = Assert.Single(CheckPicture.Of(LaneProfileReader.Default, stretch), line => line.Label == "20");
        Assert.All(line.Points, point => Assert.Equal(20.75, point.Across.Value, 12));
        Assert.Equal((12.3, 40.0), (line.Points[0].Down.Value, line.Points[^1].Down.Value));
        Assert.All(line.Points.Zip(line.Points.Skip(1)), pair => Assert.InRange(pair.Second.Down.Value - pair.First.Down.Value, 0, 1.0001));
    }

    [Theory]
    [InlineData(-15, 0)]
    [InlineData(60, 63)]
    public void Of_StretchBesideTheLane_IsEmpty(double from, double to) =>
        Assert.Empty(CheckPicture.Of(LaneProfileReader.Default, new LaneStretch(Feet.FromFeet(from), Feet.FromFeet(to), default, default)));
}
