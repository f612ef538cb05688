using AimTrainer.Calibration;
using Silk.NET.OpenGL;

namespace AimTrainer.Display;

/// <summary>
/// Where a picture is drawn. Straight into the bound framebuffer where that holds sRGB, so that blending happens in linear light. Into a
/// picture of our own where it does not say so (some windows), and where the same picture will be shown many times and is dearer to draw
/// than to copy; the bytes are then copied as they are.
/// </summary>
internal sealed class DrawingTarget(GL gl, bool? copiesCheaply) : IDisposable
{
    /// <summary>Mesa's drivers that draw on the processor. A copy costs them as much as the fullest picture; a graphics card, next to nothing.</summary>
    private static readonly string[] _onProcessor = ["llvmpipe", "softpipe", "swrast"];

    private readonly bool _copiesCheaply = copiesCheaply ?? !_onProcessor.Any(name => gl.GetStringS(StringName.Renderer).Contains(name, StringComparison.OrdinalIgnoreCase));
    private uint _framebuffer;
    private uint _colour;
    private int _bound;
    private bool _isOwn;
    private bool _isKept;
    private PictureSize _size;

    /// <summary>A new picture comes: looks at the bound framebuffer anew.</summary>
    /// <param name="size">The framebuffer's size.</param>
    /// <param name="isDear">Whether drawing it costs more than copying it, on a graphics card.</param>
    public void Fit(PictureSize size, bool isDear)
    {
        _isKept = false;
        _bound = gl.GetInteger(GetPName.DrawFramebufferBinding);
        gl.GetFramebufferAttachmentParameter(
            FramebufferTarget.DrawFramebuffer,
            _bound == 0 ? (FramebufferAttachment)GLEnum.BackLeft : FramebufferAttachment.ColorAttachment0,
            FramebufferAttachmentParameterName.ColorEncoding,
            out int encoding);
        _isOwn = encoding != (int)GLEnum.Srgb || (isDear && _copiesCheaply);
        if (!_isOwn || (_framebuffer != 0 && _size == size))
        {
            return;
        }

        if (_framebuffer == 0)
        {
            (_framebuffer, _colour) = (gl.GenFramebuffer(), gl.GenRenderbuffer());
        }

        _size = size;
        gl.BindRenderbuffer(RenderbufferTarget.Renderbuffer, _colour);
        gl.RenderbufferStorage(RenderbufferTarget.Renderbuffer, InternalFormat.Srgb8Alpha8, (uint)size.Width, (uint)size.Height);
        gl.BindFramebuffer(FramebufferTarget.Framebuffer, _framebuffer);
        gl.FramebufferRenderbuffer(FramebufferTarget.Framebuffer, FramebufferAttachment.ColorAttachment0, RenderbufferTarget.Renderbuffer, _colour);
        gl.BindFramebuffer(FramebufferTarget.Framebuffer, (uint)_bound);
    }

    /// <summary>Turns to where the picture is to be drawn.</summary>
    /// <returns>False: it stands there from an earlier frame, and nothing is to be drawn.</returns>
    public bool Begin()
    {
        if (_isOwn && !_isKept)
        {
            gl.BindFramebuffer(FramebufferTarget.Framebuffer, _framebuffer);
        }

        return !_isKept;
    }

    /// <summary>Brings the picture into the framebuffer that is shown.</summary>
    public void End()
    {
        _isKept = _isOwn;
        if (_isOwn)
        {
            gl.BindFramebuffer(FramebufferTarget.ReadFramebuffer, _framebuffer);
            gl.BindFramebuffer(FramebufferTarget.DrawFramebuffer, (uint)_bound);
            gl.BlitFramebuffer(0, 0, _size.Width, _size.Height, 0, 0, _size.Width, _size.Height, ClearBufferMask.ColorBufferBit, BlitFramebufferFilter.Nearest);
            gl.BindFramebuffer(FramebufferTarget.Framebuffer, (uint)_bound);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_framebuffer != 0)
        {
            gl.DeleteFramebuffer(_framebuffer);
            gl.DeleteRenderbuffer(_colour);
            _framebuffer = 0;
        }
    }
}
