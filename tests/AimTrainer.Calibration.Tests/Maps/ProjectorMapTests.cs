using AimTrainer.Domain;

namespace AimTrainer.Calibration.Tests;

public sealed class ProjectorMapTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.03, 0.01)]
    [InlineData(-0.05, -0.01)]
    public void LanePointOf_PixelOfAnyLitPlace_GivesThePlaceBack(double k1, double k2)
    {
        var chance = new Chance(5);
        for (var i = 0; i < 100; i++)
        {
            var picture = ThrownPicture.At(chance, new LensDistortion(k1, k2));
            for (var k = 0; k < 20; k++)
            {
                var place = picture.Place(chance);
                var back = picture.Map.LanePointOf(picture.Map.PixelOf(place));
                Assert.NotNull(back);
                Assert.InRange(back.Value.Across.Value, place.Across.Value - 1e-9, place.Across.Value + 1e-9);
                Assert.InRange(back.Value.Down.Value, place.Down.Value - 1e-9, place.Down.Value + 1e-9);
            }
        }
    }

    [Fact]
    public void LanePointOf_EveryPixelOfAPicture_ComesBackOrIsAboveTheHorizon()
    {
        // A projector at the foul line that looks down the lane: the horizon is where its rays run level.
        var picture = ThrownPicture.Of(20.75, 0, 120, 480, 0, 1500, new LensDistortion(-0.02, 0), LaneStretch.Whole with { From = Feet.FromFeet(10) });
        var (known, unknown) = (0, 0);
        for (var x = 0; x <= 1920; x += 60)
        {
            for (var y = 0; y <= 1080; y += 60)
            {
                var pixel = new ProjectorPixel(x, y);
                if (picture.Map.LanePointOf(pixel) is { } place)
                {
                    var back = picture.Map.TryPixelOf(place);
                    Assert.NotNull(back);
                    Assert.InRange(Math.Abs(back.Value.X - x) + Math.Abs(back.Value.Y - y), 0, 1e-8);
                    known++;
                }
                else
                {
                    unknown++;
                    Assert.InRange(y, 0, 300);
                }
            }
        }

        Assert.True(known > 100 && unknown > 50, $"{known}, {unknown}");
    }

    [Fact]
    public void TryPixelOf_BehindTheProjector_IsNull()
    {
        var picture = ThrownPicture.Of(20, 240, 120, 500, 0, 3000, default, new LaneStretch(Feet.FromFeet(35), Feet.FromFeet(60), default, default));
        Assert.Null(picture.Map.TryPixelOf(new LanePoint(Inches.FromInches(20), Feet.FromFeet(10))));
        Assert.NotNull(picture.Map.TryPixelOf(new LanePoint(Inches.FromInches(20), Feet.FromFeet(40))));
    }

    [Theory]
    [InlineData(double.NaN, 0)]
    [InlineData(double.PositiveInfinity, 0)]
    [InlineData(0, 1e300)]
    public void LanePointOf_NoPixel_IsNull(double x, double y)
    {
        var picture = ThrownPicture.Of(20, -60, 120, 300, 0, 2000, new LensDistortion(-0.02, 0), LaneStretch.Whole with { From = Feet.FromFeet(0) });
        Assert.Null(picture.Map.LanePointOf(new ProjectorPixel(x, y)));
    }

    [Fact]
    public void PixelSizeAt_AskewMap_IsTheDistanceBetweenLinesOnePixelApart()
    {
        // x grows by 10 px an inch across and 5 px an inch down, y by 2 px an inch down: lines down the lane stand slanting, and two of
        // them an inch apart are 10 px apart along x, but 10 x 2 / sqrt(29) square to them.
        var map = new ProjectorMap { Picture = new PictureSize(1920, 1080), Homography = new Homography(10, 5, 0, 0, 2, 0, 0, 0, 1) };
        var size = map.PixelSizeAt(new LanePoint(Inches.FromInches(10), Feet.FromFeet(5)));
        Assert.Equal(Math.Sqrt(29) / 20, size.AcrossInches, 12);
        Assert.Equal(10.0 / 20, size.AlongInches, 12);
    }

    [Fact]
    public void PixelSizeAt_BentKeystonedMap_AgreesWithSmallSteps()
    {
        var picture = ThrownPicture.Of(40, -60, 120, 300, 0.3, 2000, new LensDistortion(0.05, -0.02), LaneStretch.Whole);
        var place = new LanePoint(Inches.FromInches(12), Feet.FromFeet(30));
        ProjectorPixel At(double across, double down) => picture.Map.PixelOf(new LanePoint(Inches.FromInches(12 + across), Feet.FromFeet(30 + (down / 12))));
        const double Step = 1e-4;
        var (xa, ya) = ((At(Step, 0).X - At(-Step, 0).X) / (2 * Step), (At(Step, 0).Y - At(-Step, 0).Y) / (2 * Step));
        var (xd, yd) = ((At(0, Step).X - At(0, -Step).X) / (2 * Step), (At(0, Step).Y - At(0, -Step).Y) / (2 * Step));
        var area = Math.Abs((xa * yd) - (xd * ya));
        Assert.Equal(Math.Sqrt((xd * xd) + (yd * yd)) / area, picture.Map.PixelSizeAt(place).AcrossInches, 7);
        Assert.Equal(Math.Sqrt((xa * xa) + (ya * ya)) / area, picture.Map.PixelSizeAt(place).AlongInches, 7);
    }
}
