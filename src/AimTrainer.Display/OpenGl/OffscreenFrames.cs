using AimTrainer.Calibration;
using AimTrainer.Domain;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace AimTrainer.Display;

/// <summary>
/// Draws scenes into pictures, on a surface that was opened for it: <c>EglSurface.Open(size)</c>. A colour drawn flat comes out as exactly
/// its bytes (sRGB). Used on the thread that opened the surface.
/// </summary>
public sealed class OffscreenFrames : IDisposable
{
    private readonly EglSurface _surface;
    private readonly ProjectorPainter _projector = new();
    private readonly OverheadPainter _overhead = new();
    private readonly byte[] _pixels;

    /// <param name="surface">The surface; it stays the caller's to dispose of, after this.</param>
    public OffscreenFrames(EglSurface surface)
    {
        ArgumentNullException.ThrowIfNull(surface);
        _surface = surface;
        _pixels = new byte[surface.Size.Width * surface.Size.Height * 4];
        _projector.Start(surface.Gl);
        _overhead.Start(surface.Gl);
    }

    /// <summary>What a projector with this map would throw on the lane.</summary>
    /// <param name="scene">The scene.</param>
    /// <param name="map">The map.</param>
    /// <exception cref="ArgumentException">The map cannot be drawn by; the text says why.</exception>
    public Image<Rgba32> Draw(Scene<LanePoint> scene, ProjectorMap map)
    {
        _projector.Show(scene, map);
        return Draw(_projector);
    }

    /// <summary>What a screen would show.</summary>
    /// <param name="scene">The scene.</param>
    public Image<Rgba32> Draw(Scene<ScreenPoint> scene)
    {
        _overhead.Show(scene);
        return Draw(_overhead);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _projector.Dispose();
        _overhead.Dispose();
    }

    private Image<Rgba32> Draw(ScenePainter painter)
    {
        painter.Paint(_surface.Size);
        _surface.Read(_pixels);
        return Image.LoadPixelData<Rgba32>(_pixels, _surface.Size.Width, _surface.Size.Height);
    }
}
