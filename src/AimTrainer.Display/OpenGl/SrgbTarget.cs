using AimTrainer.Calibration;
using Silk.NET.OpenGL;

namespace AimTrainer.Display;

/// <summary>
/// Sees to it that blending happens in linear light. Where the bound framebuffer holds sRGB, drawing goes straight into it; where it does not
/// say so (some windows), drawing goes into a picture of our own that does, and the bytes are copied as they are.
/// </summary>
internal sealed class SrgbTarget(GL gl) : IDisposable
{
    private uint _framebuffer;
    private uint _colour;
    private int _bound;
    private bool _isNeeded;
    private PictureSize _size;

    /// <summary>Looks at the bound framebuffer anew.</summary>
    public void Fit(PictureSize size)
    {
        _bound = gl.GetInteger(GetPName.DrawFramebufferBinding);
        gl.GetFramebufferAttachmentParameter(
            FramebufferTarget.DrawFramebuffer,
            _bound == 0 ? (FramebufferAttachment)GLEnum.BackLeft : FramebufferAttachment.ColorAttachment0,
            FramebufferAttachmentParameterName.ColorEncoding,
            out int encoding);
        _isNeeded = encoding != (int)GLEnum.Srgb;
        if (!_isNeeded || (_framebuffer != 0 && _size == size))
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

    public void Begin()
    {
        if (_isNeeded)
        {
            gl.BindFramebuffer(FramebufferTarget.Framebuffer, _framebuffer);
        }
    }

    public void End()
    {
        if (_isNeeded)
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
