using AimTrainer.Domain;

namespace AimTrainer.Display.Tests;

/// <summary>Two projectors that share a stretch of lane throw, together, as much light there as one alone elsewhere.</summary>
public sealed class OpenGlOverlapTests
{
    [Theory]
    [InlineData(0, 0, 255)]
    [InlineData(0, 0, 150)]
    [InlineData(-0.06, 0.01, 220)]
    public void Draw_TwoThatOverlap_AreEvenWithinTwoPercent(double k1, double k2, byte grey)
    {
        var near = OpenGlSamples.Map(0, 40, (1500, 1040), (420, 1040), (1150, 60), (770, 60)) with
        {
            Stretch = new(Feet.FromFeet(-15), Feet.FromFeet(36), Feet.FromFeet(0), Feet.FromFeet(6)),
            Distortion = new(k1, k2),
        };
        var far = OpenGlSamples.Map(28, 60, (1350, 1000), (520, 1040), (1160, 90), (760, 60)) with
        {
            Stretch = new(Feet.FromFeet(30), Feet.FromFeet(63), Feet.FromFeet(6), Feet.FromFeet(0)),
            Distortion = new(k1, k2),
        };
        var scene = new Scene<LanePoint>(new(0, 0, 0), [OpenGlSamples.Fill(
            new(grey, grey, grey), OpenGlSamples.At(0, 0), OpenGlSamples.At(41.5, 0), OpenGlSamples.At(41.5, 60), OpenGlSamples.At(0, 60))]);
        using var surface = OpenGlSurface.Open();
        using var frames = new OffscreenFrames(surface);
        using var nearImage = frames.Draw(scene, near);
        using var farImage = frames.Draw(scene, far);
        var (nearLight, farLight, even) = (new OpenGlLight(nearImage), new OpenGlLight(farImage), OpenGlLight.OfByte(grey));

        for (var feet = 28.0; feet <= 38; feet += 0.125)
        {
            for (var inches = 2.0; inches <= 39.5; inches += 7.5)
            {
                var place = OpenGlSamples.At(inches, feet);
                var (a, b) = (near.PixelOf(place), far.PixelOf(place));
                var nearPart = feet < 36.2 ? nearLight.Between(a.X, a.Y) : 0;
                var farPart = feet > 29.8 ? farLight.Between(b.X, b.Y) : 0;
                Assert.InRange((nearPart + farPart) / even, 0.98, 1.02);
                Assert.InRange(nearPart / even, near.Stretch.WeightAt(Feet.FromFeet(feet)) - 0.02, near.Stretch.WeightAt(Feet.FromFeet(feet)) + 0.02);
            }
        }
    }

    [Fact]
    public void Draw_BeyondTheStretch_IsBlackEvenWhereTheBackgroundIsNot()
    {
        var map = OpenGlSamples.Maps["straight, from above the bowler"] with
        {
            Stretch = new(Feet.FromFeet(10), Feet.FromFeet(30), Feet.FromFeet(0), Feet.FromFeet(0)),
        };
        using var surface = OpenGlSurface.Open();
        using var frames = new OffscreenFrames(surface);
        using var image = frames.Draw(new(new(0, 80, 0), []), map);
        byte Green(double feet)
        {
            var pixel = map.PixelOf(OpenGlSamples.At(20, feet));
            return image[(int)pixel.X, (int)pixel.Y].G;
        }

        Assert.Equal([0, 80, 80, 0], [Green(9.5), Green(10.5), Green(29.5), Green(30.5)]);
        Assert.Equal(80, image[5, (int)map.PixelOf(OpenGlSamples.At(20, 20)).Y].G);
    }
}
