using AimTrainer.Calibration;
using Silk.NET.OpenGL;

namespace AimTrainer.Display;

/// <summary>What painters of scenes share: they work a scene out when it, or the size, is new, and draw what they have otherwise.</summary>
public abstract class ScenePainter : IFramePainter
{
    private readonly Lettering _lettering = new();
    private SceneRenderer? _renderer;
    private readonly PictureMesh _mesh = new();
    private CoverageBuilder? _builder;
    private PictureSize _size;
    private bool _isNew = true;

    private protected ScenePainter()
    {
    }

    /// <summary>How many rectangles the last frame was made of; for measuring.</summary>
    public int Rectangles => _mesh.Rectangles;

    /// <summary>How many pixels of the last frame were cut by edges; for measuring.</summary>
    public int EdgePixels => _mesh.Coverage.Length;

    /// <summary>Whether a picture that is dear to draw is kept and copied; null leaves it to the driver. For the tests, which have no graphics card.</summary>
    internal bool? CopiesCheaply { get; init; }

    /// <inheritdoc/>
    /// <exception cref="InvalidOperationException">The driver refuses what the display needs; the text says what.</exception>
    public void Start(GL gl)
    {
        ArgumentNullException.ThrowIfNull(gl);
        _renderer?.Dispose();
        _renderer = new SceneRenderer(gl, CopiesCheaply);
        _isNew = true;
    }

    /// <inheritdoc/>
    /// <exception cref="ArgumentException">The scene holds a place or size that is not a finite number.</exception>
    public void Paint(PictureSize size)
    {
        var renderer = _renderer ?? throw new InvalidOperationException("Start comes before Paint");
        if (size.Width < 1 || size.Height < 1)
        {
            return; // A window that is made as small as nothing shows nothing.
        }

        if (_isNew || size != _size)
        {
            if (_builder is null || size != _size)
            {
                (_builder, _size) = (new CoverageBuilder(size), size);
            }

            var dimming = DimmingOf(size);
            _mesh.StartAnew(dimming);
            var background = WorkOut(size, _builder, _mesh, _lettering);
            renderer.Take(_mesh, background, size, dimming);
            _isNew = false;
        }

        renderer.Draw();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _renderer?.Dispose();
        _renderer = null;
        _lettering.Dispose();
        GC.SuppressFinalize(this);
    }

    /// <summary>What is shown has changed.</summary>
    private protected void Renew() => _isNew = true;

    /// <summary>What dims the picture along its overlaps; null for nothing.</summary>
    private protected virtual Dimming? DimmingOf(PictureSize size) => null;

    /// <summary>Fills the mesh, and says what it is cleared to.</summary>
    private protected abstract LinearColour WorkOut(PictureSize size, CoverageBuilder builder, PictureMesh mesh, Lettering lettering);
}
