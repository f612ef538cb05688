using AimTrainer.Calibration;
using Silk.NET.OpenGL;

namespace AimTrainer.Display;

/// <summary>
/// Draws the picture of one window or offscreen surface. All calls come on the thread that holds the GL context, which is current.
/// </summary>
public interface IFramePainter : IDisposable
{
    /// <summary>Makes what it needs in a new context; called once before any frame.</summary>
    /// <param name="gl">The context's functions.</param>
    void Start(GL gl);

    /// <summary>Draws one frame into the bound framebuffer. In the steady state (nothing new to show) it allocates nothing.</summary>
    /// <param name="size">The size of that framebuffer.</param>
    void Paint(PictureSize size);
}
