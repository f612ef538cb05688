using AimTrainer.Calibration;
using Silk.NET.OpenGL;

namespace AimTrainer.Display;

/// <summary>Somewhere that GL can draw: a window, or an offscreen surface. Used on one thread.</summary>
public interface IGlSurface : IDisposable
{
    /// <summary>The functions of its context, which is current on the calling thread.</summary>
    GL Gl { get; }

    /// <summary>The size of its framebuffer now.</summary>
    PictureSize Size { get; }
}
