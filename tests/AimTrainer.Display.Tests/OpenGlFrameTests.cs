using AimTrainer.Calibration;
using Silk.NET.OpenGL;

namespace AimTrainer.Display.Tests;

/// <summary>Frames: what they cost when nothing is new, sizes from one pixel to 8K, many shapes, and what changes when something is new.</summary>
public sealed class OpenGlFrameTests
{
    private static readonly ProjectorMap _map = OpenGlSamples.Maps["keystoned to the left"];

    [Fact]
    public void Paint_NothingNew_AllocatesNothing()
    {
        using var surface = OpenGlSurface.Open();
        using var projector = new ProjectorPainter();
        using var overhead = new OverheadPainter();
        projector.Start(surface.Gl);
        overhead.Start(surface.Gl);
        var (lane, screen) = (OpenGlSamples.Lane(), OpenGlSamples.Screen());
        void Frame()
        {
            projector.Show(lane, _map);
            projector.Paint(surface.Size);
            overhead.Show(screen);
            overhead.Paint(surface.Size);
        }

        for (var i = 0; i < 3; i++)
        {
            Frame();
        }

        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 20; i++)
        {
            Frame();
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.Equal(GLEnum.NoError, surface.Gl.GetError());
    }

    [Fact]
    public void Paint_ADearPictureOnAGraphicsCard_IsKeptAndComesOutTheSame()
    {
        var size = new PictureSize(480, 270);
        using var surface = OpenGlSurface.Open(size);
        using var drawing = new OverheadPainter { CopiesCheaply = false };
        using var copying = new OverheadPainter { CopiesCheaply = true };
        drawing.Start(surface.Gl);
        copying.Start(surface.Gl);
        foreach (var name in new[] { "ten-shots", "line-held", "ten-shots" })
        {
            var scene = OverheadScene.Build(SceneStates.All().Single(state => state.Name == name).Overhead);
            var drawn = Frame(drawing, scene);
            Assert.True(drawing.EdgePixels > size.Width * size.Height / 10, "the picture is not dear: the test shows nothing");
            Assert.Equal(drawn, Frame(copying, scene));

            // From the second frame on nothing is drawn: a picture that was spoilt in between comes back whole all the same.
            surface.Gl.ClearColor(1, 0, 0, 1);
            surface.Gl.Clear(ClearBufferMask.ColorBufferBit);
            var before = GC.GetAllocatedBytesForCurrentThread();
            copying.Paint(size);
            Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
            Assert.Equal(drawn, Read());
            Assert.Equal(GLEnum.NoError, surface.Gl.GetError());
        }

        byte[] Frame(OverheadPainter painter, Scene<ScreenPoint> scene)
        {
            painter.Show(scene);
            painter.Paint(size);
            return Read();
        }

        byte[] Read()
        {
            var pixels = new byte[size.Width * size.Height * 4];
            surface.Read(pixels);
            return pixels;
        }
    }

    [Fact]
    public void Paint_EightK_DrawsTheTargetWhereItIs()
    {
        var size = new PictureSize(7680, 4320);
        using var surface = OpenGlSurface.Open(size);
        using var painter = new ProjectorPainter();
        painter.Start(surface.Gl);
        painter.Show(OpenGlSamples.Lane() with { Shapes = [.. OpenGlSamples.Lane().Shapes, OpenGlSamples.Fill(new(9, 250, 99), OpenGlSamples.Target(17, 1, 30, 2))] }, _map);
        painter.Paint(size);
        Assert.Equal(GLEnum.NoError, surface.Gl.GetError());

        // Four pixels of the picture to one of the map.
        var pixel = _map.PixelOf(OpenGlSamples.At(16.5 * OpenGlSamples.BoardWidth, 30));
        Span<byte> found = stackalloc byte[4];
        surface.Gl.ReadPixels((int)(pixel.X * 4), size.Height - 1 - (int)(pixel.Y * 4), 1, 1, PixelFormat.Rgba, PixelType.UnsignedByte, found);
        Assert.Equal([9, 250, 99, 255], found.ToArray());
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(1, 500)]
    [InlineData(500, 1)]
    [InlineData(3, 2)]
    public void Paint_TinyPicture_Draws(int width, int height)
    {
        using var surface = OpenGlSurface.Open(new(width, height));
        using var frames = new OffscreenFrames(surface);
        using var lane = frames.Draw(OpenGlSamples.Lane() with { Background = new(90, 0, 0) }, _map);
        Assert.Equal((width, height), (lane.Width, lane.Height));
        Assert.True(lane[0, height - 1].R > 10, "nothing was drawn");
        using var screen = frames.Draw(OpenGlSamples.Screen());
        Assert.True(screen[width - 1, 0].R >= 8, "nothing was drawn");
    }

    [Fact]
    public void Paint_LaneThatGoesOnBehindTheProjector_IsDrawnAsFarAsItIsSeen()
    {
        // The horizon of this map lies near 9 ft: what is nearer has no pixel, or one on the wrong side of the horizon.
        var map = OpenGlSamples.Maps["long throw at the far end"];
        Assert.True(map.PixelOf(OpenGlSamples.At(20, 0)).Y < 0, "the foul line is not beyond the horizon: the test shows nothing");
        Assert.Equal(Drawn(map, 30, 60), Drawn(map, 0, 60));
        Assert.Equal(Drawn(map, 30, 60), Drawn(map, -10, 60));
    }

    [Fact]
    public void Paint_ShapeFarOutsideALensThatBends_IsNotFoldedIntoThePicture()
    {
        // At twenty half diagonals the terms of this lens would turn a place about and bring it back.
        var map = OpenGlSamples.Maps["barrel lens"] with { Distortion = new(-0.1, 0) };
        using var surface = OpenGlSurface.Open();
        using var frames = new OffscreenFrames(surface);
        var wide = OpenGlSamples.Fill(new(255, 255, 255), OpenGlSamples.At(-900, 1), OpenGlSamples.At(-60, 1), OpenGlSamples.At(-60, 4), OpenGlSamples.At(-900, 4));
        Assert.Contains(
            Enumerable.Range(60, 840),
            inches => InPicture(map.PixelOf(OpenGlSamples.At(-inches, 2))) && !InPicture(Straight(map).PixelOf(OpenGlSamples.At(-inches, 2))));
        using var image = frames.Draw(new(new(0, 0, 0), [wide]), map);
        var light = new OpenGlLight(image);
        using var straight = frames.Draw(new(new(0, 0, 0), [wide]), Straight(map));
        var limit = new OpenGlLight(straight).Weigh().Area * 1.5;
        Assert.InRange(light.Weigh().Area, 0, limit);

        static bool InPicture(ProjectorPixel pixel) => pixel.X is > 0 and < 1920 && pixel.Y is > 0 and < 1080;
        static ProjectorMap Straight(ProjectorMap map) => map with { Distortion = default };
    }

    [Fact]
    public void Paint_ASizeThatIsNoSize_DrawsNothing()
    {
        using var surface = OpenGlSurface.Open(new(10, 10));
        using var painter = new OverheadPainter();
        painter.Start(surface.Gl);
        painter.Paint(new(0, 10));
        Assert.Equal(0, painter.Rectangles);
    }

    [Fact]
    public void Paint_OtherSizeThanTheMap_ShowsThePictureScaled()
    {
        using var surface = OpenGlSurface.Open(new(960, 540));
        using var frames = new OffscreenFrames(surface);
        var target = OpenGlSamples.Target(17, 5, 15, 4);
        using var image = frames.Draw(new(new(0, 0, 0), [OpenGlSamples.Fill(new(255, 255, 255), target)]), _map);
        var (area, x, y) = new OpenGlOutline(_map, target).Weigh();
        var drawn = new OpenGlLight(image).Weigh();
        Assert.InRange(drawn.X, (x / 2) - 0.05, (x / 2) + 0.05);
        Assert.InRange(drawn.Y, (y / 2) - 0.05, (y / 2) + 0.05);
        Assert.InRange(drawn.Area / (area / 4), 0.998, 1.002);
    }

    [Fact]
    public void Paint_ThousandsOfShapes_DrawsTheLastOnTop()
    {
        var shapes = new List<Shape<ScreenPoint>>();
        for (var i = 0; i < 4000; i++)
        {
            // Spread evenly, with no pattern to it. Source: the golden ratio and the square root of two, which no fraction comes near.
            var (x, y) = (i * 1.618034 % 1 * 1.77, i * 1.414214 % 1);
            var colour = new Colour((byte)(i % 256), (byte)(i / 16), 40, (byte)(100 + (i % 156)));
            shapes.Add((i % 4) switch
            {
                0 => new Shape<ScreenPoint>.Ellipse(new(x, y), 0.02, 0.01, colour, i % 8 == 0 ? 0.003 : 0),
                1 => new Shape<ScreenPoint>.Stroke([new(x, y), new(x + 0.1, y + 0.05), new(x, y + 0.1)], 0.004, colour, i % 8 == 1),
                2 => new Shape<ScreenPoint>.Polygon([new(x, y), new(x + 0.04, y), new(x, y + 0.04)], colour),
                _ => new Shape<ScreenPoint>.Writing($"{i}", new(x, y), 0.03, TextAlign.Middle, colour),
            });
        }

        shapes.Add(new Shape<ScreenPoint>.Polygon([new(0.4, 0.4), new(0.6, 0.4), new(0.6, 0.6), new(0.4, 0.6)], new(1, 2, 3)));
        using var surface = OpenGlSurface.Open();
        using var frames = new OffscreenFrames(surface);
        using var image = frames.Draw(new(new(0, 0, 0), [.. shapes]));
        Assert.Equal(new(1, 2, 3), image[540, 540]);
        Assert.InRange(new OpenGlLight(image).Weigh().Area, 20_000, 1_900_000);
    }

    [Fact]
    public void Show_SomethingNew_ChangesTheNextFrame()
    {
        using var surface = OpenGlSurface.Open(new(192, 108));
        using var frames = new OffscreenFrames(surface);
        using var red = frames.Draw(new Scene<ScreenPoint>(new(200, 0, 0), []));
        using var green = frames.Draw(new Scene<ScreenPoint>(new(0, 200, 0), []));
        Assert.Equal((200, 0), (red[50, 50].R, red[50, 50].G));
        Assert.Equal((0, 200), (green[50, 50].R, green[50, 50].G));
    }

    [Fact]
    public void Paint_BeforeStart_Throws()
    {
        using var painter = new OverheadPainter();
        Assert.Throws<InvalidOperationException>(() => painter.Paint(new(10, 10)));
    }

    private static byte[] Drawn(ProjectorMap map, double from, double to)
    {
        using var surface = OpenGlSurface.Open();
        using var painter = new ProjectorPainter();
        painter.Start(surface.Gl);
        painter.Show(
            new(new(0, 0, 0), [OpenGlSamples.Fill(
                new(255, 255, 255), OpenGlSamples.At(5, from), OpenGlSamples.At(30, from), OpenGlSamples.At(30, to), OpenGlSamples.At(5, to))]),
            map);
        painter.Paint(surface.Size);
        var pixels = new byte[surface.Size.Width * surface.Size.Height * 4];
        surface.Read(pixels);
        Assert.Contains((byte)255, pixels.Where((_, i) => i % 4 == 0));
        return pixels;
    }

    [Fact]
    public void Paint_ProjectorWithoutAMap_IsBlack()
    {
        using var surface = OpenGlSurface.Open(new(16, 16));
        using var painter = new ProjectorPainter();
        painter.Start(surface.Gl);
        painter.Paint(surface.Size);
        var pixels = new byte[16 * 16 * 4];
        surface.Read(pixels);
        Assert.Equal([0, 0, 0, 255], pixels[..4]);
    }
}
