using System.Runtime.InteropServices;
using AimTrainer.Calibration;
using Silk.NET.OpenGL;

namespace AimTrainer.Display;

/// <summary>
/// A picture that GL 3.3 draws without a screen, through EGL: no X, no Wayland. Its framebuffer holds sRGB. Used on the thread that opened it.
/// </summary>
public sealed class EglSurface : IGlSurface
{
    private const string HowToGetIt = "install the packages libegl1 and libgl1-mesa-dri (Debian, Ubuntu), or the driver of the graphics card";

    private readonly IEgl _egl;
    private readonly nint _display;
    private readonly nint _tiny;
    private readonly nint _context;
    private uint _framebuffer;
    private uint _colour;

    private EglSurface(IEgl egl, nint display, nint tiny, nint context, PictureSize size)
    {
        (_egl, _display, _tiny, _context, Size) = (egl, display, tiny, context, size);
        Gl = GL.GetApi(egl.FunctionOf);
    }

    /// <inheritdoc/>
    public GL Gl { get; }

    /// <inheritdoc/>
    public PictureSize Size { get; }

    /// <summary>The renderer and version of GL, as the driver calls itself.</summary>
    public string Driver { get; private set; } = "";

    /// <summary>Opens a picture of this size.</summary>
    /// <param name="size">Pixels; each side at least 1, at most what the driver can draw.</param>
    public static EglOpened Open(PictureSize size) => Open(size, static () => EglLibrary.Load(TryLoad));

    /// <summary>Opens it on an EGL that is given, which a test lets fail.</summary>
    /// <param name="size">Pixels; each side at least 1.</param>
    /// <param name="load">The library, or null when this machine has none.</param>
    internal static EglOpened Open(PictureSize size, Func<IEgl?> load)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(size.Width, 1, nameof(size));
        ArgumentOutOfRangeException.ThrowIfLessThan(size.Height, 1, nameof(size));
        if (load() is not { } egl)
        {
            return Failed($"cannot draw offscreen: found no libEGL on this machine; {HowToGetIt}");
        }

        var problem = $"cannot draw offscreen: libEGL knows no display that works without X; {HowToGetIt}";
        foreach (var place in egl.Places())
        {
            var opened = Open(egl, place, size);
            if (opened.Worked)
            {
                return opened;
            }

            problem = opened.Problem;
        }

        return Failed(problem);
    }

    /// <summary>Copies the picture: four bytes a pixel (red, green, blue, opacity), the top row first.</summary>
    /// <param name="pixels">At least width x height x 4 bytes.</param>
    public void Read(Span<byte> pixels)
    {
        var row = Size.Width * 4;
        ArgumentOutOfRangeException.ThrowIfLessThan(pixels.Length, row * Size.Height, nameof(pixels));
        Gl.PixelStore(PixelStoreParameter.PackAlignment, 4);
        Gl.ReadPixels(0, 0, (uint)Size.Width, (uint)Size.Height, PixelFormat.Rgba, PixelType.UnsignedByte, pixels);

        // GL keeps the bottom row first.
        var held = new byte[row];
        for (int top = 0, bottom = Size.Height - 1; top < bottom; top++, bottom--)
        {
            var upper = pixels.Slice(top * row, row);
            var lower = pixels.Slice(bottom * row, row);
            upper.CopyTo(held);
            lower.CopyTo(upper);
            held.CopyTo(lower);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_framebuffer != 0)
        {
            Gl.DeleteFramebuffer(_framebuffer);
            Gl.DeleteRenderbuffer(_colour);
            _framebuffer = 0;
        }

        Gl.Dispose();
        _egl.Release(_display, _tiny, _context);
    }

    private static EglOpened Open(IEgl egl, EglPlace place, PictureSize size)
    {
        var display = egl.Open(place);
        if (display == 0)
        {
            return Failed($"cannot draw offscreen: EGL opened no display ({egl.LastError()}); {HowToGetIt}");
        }

        var vendor = egl.VendorOf(display);
        var config = egl.ConfigOf(display);
        if (config == 0)
        {
            return Failed($"cannot draw offscreen: the driver ({vendor}) offers no configuration for desktop OpenGL; {HowToGetIt}");
        }

        var context = egl.ContextOf(display, config);
        if (context == 0)
        {
            return Failed($"cannot draw offscreen: the driver ({vendor}) refused a context of OpenGL 3.3 core ({egl.LastError()}); {HowToGetIt}");
        }

        nint tiny = 0;
        if (!egl.MakeCurrent(display, 0, context))
        {
            tiny = egl.TinySurfaceOf(display, config);
            if (tiny == 0 || !egl.MakeCurrent(display, tiny, context))
            {
                var error = egl.LastError();
                egl.Release(display, tiny, context);
                return Failed($"cannot draw offscreen: the driver ({vendor}) did not make its context current ({error}); {HowToGetIt}");
            }
        }

        var surface = new EglSurface(egl, display, tiny, context, size);
        if (surface.MakeFramebuffer() is { } problem)
        {
            surface.Dispose();
            return Failed(problem);
        }

        return new EglOpened(surface, null);
    }

    private static EglOpened Failed(string problem) => new(null, problem);

    private static nint TryLoad(string name) => NativeLibrary.TryLoad(name, out var handle) ? handle : 0;

    private string? MakeFramebuffer()
    {
        Driver = $"{Gl.GetStringS(StringName.Renderer)}, OpenGL {Gl.GetStringS(StringName.Version)}";
        var most = Math.Min(Gl.GetInteger(GetPName.MaxRenderbufferSize), Gl.GetInteger(GetPName.MaxTextureSize));
        if (Size.Width > most || Size.Height > most)
        {
            return FormattableString.Invariant(
                $"cannot draw offscreen: a picture of {Size.Width} x {Size.Height} is larger than this driver draws; at most {most} x {most}");
        }

        _framebuffer = Gl.GenFramebuffer();
        _colour = Gl.GenRenderbuffer();
        Gl.BindRenderbuffer(RenderbufferTarget.Renderbuffer, _colour);
        Gl.RenderbufferStorage(RenderbufferTarget.Renderbuffer, InternalFormat.Srgb8Alpha8, (uint)Size.Width, (uint)Size.Height);
        Gl.BindFramebuffer(FramebufferTarget.Framebuffer, _framebuffer);
        Gl.FramebufferRenderbuffer(FramebufferTarget.Framebuffer, FramebufferAttachment.ColorAttachment0, RenderbufferTarget.Renderbuffer, _colour);
        var status = Gl.CheckFramebufferStatus(FramebufferTarget.Framebuffer);
        return status == GLEnum.FramebufferComplete && Gl.GetError() == GLEnum.NoError
            ? null
            : FormattableString.Invariant(
                $"cannot draw offscreen: no memory for a picture of {Size.Width} x {Size.Height} ({status}); ask for a smaller picture");
    }
}
