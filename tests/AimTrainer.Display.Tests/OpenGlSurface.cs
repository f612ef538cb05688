using AimTrainer.Calibration;

namespace AimTrainer.Display.Tests;

/// <summary>Opens a surface for a test; without one the test fails and says why.</summary>
internal static class OpenGlSurface
{
    public static EglSurface Open(PictureSize? size = null)
    {
        var opened = EglSurface.Open(size ?? OpenGlSamples.FullHd);
        Assert.True(opened.Worked, opened.Problem);
        return opened.Surface;
    }
}
