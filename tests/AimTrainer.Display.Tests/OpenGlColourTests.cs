using AimTrainer.Calibration;
using Silk.NET.OpenGL;
using SixLabors.ImageSharp.PixelFormats;

namespace AimTrainer.Display.Tests;

/// <summary>Colours come out as what they say, and mix as light does.</summary>
public sealed class OpenGlColourTests
{
    private static readonly PictureSize _size = new(1024, 1024);

    [Theory]
    [InlineData(64)]
    [InlineData(32)]
    public void Draw_EveryGreyAndManyColours_ComeOutAsTheirBytes(int box)
    {
        // Boxes of 64 pixels are written as they are, those of 32 are blended: both ways every byte must survive.
        using var surface = OpenGlSurface.Open(_size);
        using var frames = new OffscreenFrames(surface);
        var colours = Enumerable.Range(0, 256).Select(i => i % 2 == 0 ? new Colour((byte)i, (byte)i, (byte)i) : new Colour((byte)i, (byte)(255 - i), (byte)(i * 37 % 256)));
        var all = colours.ToArray();
        using var image = frames.Draw(new Scene<ScreenPoint>(new(1, 2, 3), [.. all.Select((colour, i) => Box(i % 16 * 64, i / 16 * 64, box, box, colour))]));
        for (var i = 0; i < all.Length; i++)
        {
            var found = image[(i % 16 * 64) + (box / 2), (i / 16 * 64) + (box / 2)];
            Assert.Equal(new Rgba32(all[i].Red, all[i].Green, all[i].Blue), found);
        }

        if (box < 64)
        {
            Assert.Equal(new Rgba32(1, 2, 3), image[60, 60]);
        }
    }

    [Fact]
    public void Draw_HalfOpaqueWhiteOnBlack_IsHalfTheLight()
    {
        using var surface = OpenGlSurface.Open(_size);
        using var frames = new OffscreenFrames(surface);
        using var image = frames.Draw(new Scene<ScreenPoint>(new(0, 0, 0), [Box(100, 100, 500, 500, new(255, 255, 255, 128)), Box(200, 200, 100, 100, new(255, 0, 0, 64))]));
        Assert.InRange(OpenGlLight.OfByte(image[150, 150].G), (128 / 255.0) - 0.005, (128 / 255.0) + 0.005);

        // A quarter of red light over half of white: green keeps three quarters of its half.
        Assert.InRange(OpenGlLight.OfByte(image[250, 250].G), (128 / 255.0 * 191 / 255) - 0.005, (128 / 255.0 * 191 / 255) + 0.005);
        Assert.InRange(OpenGlLight.OfByte(image[250, 250].R), (128 / 255.0 * 191 / 255) + (64 / 255.0) - 0.005, (128 / 255.0 * 191 / 255) + (64 / 255.0) + 0.005);
    }

    [Fact]
    public void Draw_EdgeThroughThePixels_IsSoMuchLightAsIsCovered()
    {
        using var surface = OpenGlSurface.Open(_size);
        using var frames = new OffscreenFrames(surface);
        using var image = frames.Draw(new Scene<ScreenPoint>(new(0, 0, 0), [Box(100.25, 200.5, 50.5, 50.25, new(255, 255, 255))]));
        Assert.InRange(OpenGlLight.OfByte(image[100, 220].G), 0.745, 0.755);
        Assert.InRange(OpenGlLight.OfByte(image[150, 220].G), 0.745, 0.755);
        Assert.InRange(OpenGlLight.OfByte(image[120, 200].G), 0.495, 0.505);
        Assert.InRange(OpenGlLight.OfByte(image[120, 250].G), 0.745, 0.755);
        Assert.InRange(OpenGlLight.OfByte(image[100, 200].G), 0.37, 0.38);
    }

    [Fact]
    public void Paint_IntoAFramebufferThatDoesNotHoldSrgb_GivesTheSameBytes()
    {
        using var surface = OpenGlSurface.Open(_size);
        using var painter = new OverheadPainter();
        painter.Start(surface.Gl);
        painter.Show(OpenGlSamples.Screen());
        painter.Paint(_size);
        var expected = new byte[_size.Width * _size.Height * 4];
        surface.Read(expected);

        var gl = surface.Gl;
        var (framebuffer, colour) = (gl.GenFramebuffer(), gl.GenRenderbuffer());
        gl.BindRenderbuffer(RenderbufferTarget.Renderbuffer, colour);
        gl.RenderbufferStorage(RenderbufferTarget.Renderbuffer, InternalFormat.Rgba8, (uint)_size.Width, (uint)_size.Height);
        gl.BindFramebuffer(FramebufferTarget.Framebuffer, framebuffer);
        gl.FramebufferRenderbuffer(FramebufferTarget.Framebuffer, FramebufferAttachment.ColorAttachment0, RenderbufferTarget.Renderbuffer, colour);
        using var other = new OverheadPainter();
        other.Start(gl);
        other.Show(OpenGlSamples.Screen());
        other.Paint(_size);
        other.Paint(_size);
        var found = new byte[expected.Length];
        surface.Read(found);

        Assert.Equal(GLEnum.NoError, gl.GetError());
        Assert.True(expected.AsSpan().SequenceEqual(found));
        gl.DeleteFramebuffer(framebuffer);
        gl.DeleteRenderbuffer(colour);
    }

    private static Shape<ScreenPoint> Box(double x, double y, double width, double height, Colour colour)
    {
        ScreenPoint At(double right, double down) => new(right / _size.Height, down / _size.Height);
        return new Shape<ScreenPoint>.Polygon([At(x, y), At(x + width, y), At(x + width, y + height), At(x, y + height)], colour);
    }
}
