using SixLabors.ImageSharp;
namespace AimTrainer.Display.Tests;
public sealed class OpenGlLook
{
    [Fact]
    public void Look()
    {
        var opened = EglSurface.Open(OpenGlSamples.FullHd);
        Assert.True(opened.Worked, opened.Problem);
        using var surface = opened.Surface;
        using var frames = new OffscreenFrames(surface);
        Console.WriteLine(surface.Driver);
        var i = 0;
        foreach (var (name, map) in OpenGlSamples.Maps)
        {
            using var image = frames.Draw(OpenGlSamples.Lane(), map);
            image.SaveAsPng($"/tmp/gl-{i++}.png");
        }
        using var screen = frames.Draw(OpenGlSamples.Screen());
        screen.SaveAsPng("/tmp/gl-screen.png");
    }
}
