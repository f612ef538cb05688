using AimTrainer.Domain;
using SixLabors.ImageSharp;

namespace AimTrainer.Display.Tests;

/// <summary>Writing is there, upright and the right way round.</summary>
public sealed class OpenGlWritingTests
{
    private const string Needed =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz" +
        "ÄÖÜäöüßéèñç0123456789 .,:;!?'\"()[]/%+-=<>&#@’“”…←→↑↓±×·–—°½−";

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Has_EveryCharacterThatTheProgramWrites_IsInTheFont(bool bold)
    {
        using var lettering = new Lettering();
        Assert.All(Needed.EnumerateRunes(), rune => Assert.True(lettering.Has(rune, bold), $"{rune} is not in the font"));
    }

    [Fact]
    public void Draw_LettersOnTheLane_AreThoseOfAScreenAndNotTheirMirrorImage()
    {
        // A map that shows 20 ft of lane from straight above, 48 inches a picture height: then both pictures must be the same.
        var map = OpenGlSamples.Map(0, 4, (960 + (20.75 * 22.5), 1080), (960 - (20.75 * 22.5), 1080), (960 + (20.75 * 22.5), 0), (960 - (20.75 * 22.5), 0));
        using var surface = OpenGlSurface.Open();
        using var frames = new OffscreenFrames(surface);
        using var lane = frames.Draw(new(new(0, 0, 0), [new Shape<LanePoint>.Writing("F4 → 7", OpenGlSamples.At(20.75, 2), 8, TextAlign.Middle, new(255, 255, 255))]), map);
        using var screen = frames.Draw(new(new(0, 0, 0), [
            new Shape<ScreenPoint>.Writing("F4 → 7", new(960 / 1080.0, 0.5), 8 / 48.0, TextAlign.Middle, new(255, 255, 255))]));
        var (onLane, onScreen) = (new OpenGlLight(lane), new OpenGlLight(screen));

        var (ink, same, mirrored, upsideDown) = (0.0, 0.0, 0.0, 0.0);
        for (var y = 0; y < 1080; y++)
        {
            for (var x = 0; x < 1920; x++)
            {
                ink += onScreen[x, y];
                same += Math.Abs(onLane[x, y] - onScreen[x, y]);
                mirrored += Math.Abs(onLane[x, y] - onScreen[1919 - x, y]);
                upsideDown += Math.Abs(onLane[x, y] - onScreen[x, 1079 - y]);
            }
        }

        Assert.InRange(ink, 20_000, 200_000);
        Assert.InRange(same / ink, 0, 0.01);
        Assert.InRange(mirrored / ink, 0.5, 2);
        Assert.InRange(upsideDown / ink, 0.5, 2);
    }

    [Theory]
    [InlineData(TextAlign.Left, 1000, 1500)]
    [InlineData(TextAlign.Middle, 750, 1250)]
    [InlineData(TextAlign.Right, 500, 1000)]
    public void Draw_AlignedWriting_LiesAsItSays(TextAlign align, int from, int to)
    {
        using var lettering = new Lettering();
        var size = 500 / 1080.0 / lettering.WidthOf("HOUSE", bold: true);
        using var surface = OpenGlSurface.Open();
        using var frames = new OffscreenFrames(surface);
        using var image = frames.Draw(new(new(0, 0, 0), [
            new Shape<ScreenPoint>.Writing("HOUSE", new(1000 / 1080.0, 0.5), size, align, new(255, 255, 255), Bold: true)]));
        var (left, top, right, bottom) = Ink(image);
        Assert.InRange(left, from, from + 20);
        Assert.InRange(right, to - 20, to);
        Assert.InRange(bottom - top, (size * 1080) - 1, (size * 1080) * 1.04 + 2);
        Assert.InRange(bottom, 540, 545);
    }

    [Theory]
    [InlineData("\u2603")]
    [InlineData("\U0001F3B3")]
    [InlineData("\uD800")]
    [InlineData("\n")]
    public void Draw_CharacterThatTheFontLacks_IsABox(string text)
    {
        using var surface = OpenGlSurface.Open();
        using var frames = new OffscreenFrames(surface);
        using var image = frames.Draw(new(new(0, 0, 0), [new Shape<ScreenPoint>.Writing(text, new(0.5, 0.5), 0.2, TextAlign.Left, new(255, 255, 255))]));
        var (left, top, right, bottom) = Ink(image);
        Assert.Equal((324, 539), (top, bottom));
        Assert.Equal(255, image[(left + right) / 2, top + 2].G);
        Assert.Equal(255, image[left + 2, (top + bottom) / 2].G);
        Assert.Equal(0, image[(left + right) / 2, (top + bottom) / 2].G);
    }

    [Fact]
    public void Draw_StretchedWriting_IsTallerAndNoWider()
    {
        using var surface = OpenGlSurface.Open();
        using var frames = new OffscreenFrames(surface);
        Shape<ScreenPoint> Word(double stretch) => new Shape<ScreenPoint>.Writing("HE", new(0.5, 0.9), 0.1, TextAlign.Left, new(255, 255, 255), Stretch: stretch);
        using var natural = frames.Draw(new(new(0, 0, 0), [Word(1)]));
        var plain = Ink(natural);
        using var tall = frames.Draw(new(new(0, 0, 0), [Word(3)]));
        var stretched = Ink(tall);
        Assert.Equal((plain.Left, plain.Right, plain.Bottom), (stretched.Left, stretched.Right, stretched.Bottom));
        Assert.InRange((stretched.Bottom - stretched.Top + 1) / (double)(plain.Bottom - plain.Top + 1), 2.97, 3.03);
    }

    /// <summary>The outermost pixels with any light.</summary>
    private static (int Left, int Top, int Right, int Bottom) Ink(Image<SixLabors.ImageSharp.PixelFormats.Rgba32> image)
    {
        var light = new OpenGlLight(image);
        var (left, top, right, bottom) = (light.Width, light.Height, -1, -1);
        for (var y = 0; y < light.Height; y++)
        {
            for (var x = 0; x < light.Width; x++)
            {
                if (light[x, y] > 0.01)
                {
                    (left, top, right, bottom) = (Math.Min(left, x), Math.Min(top, y), Math.Max(right, x), Math.Max(bottom, y));
                }
            }
        }

        return (left, top, right, bottom);
    }
}
