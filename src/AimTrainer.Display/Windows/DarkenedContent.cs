using AimTrainer.Calibration;
using Silk.NET.OpenGL;

namespace AimTrainer.Display;

/// <summary>
/// Lets a window show its content unless it is to be dark. Whatever the content is, dark wins, and the next frame is it.
/// </summary>
/// <param name="inner">What is shown otherwise; disposed of with this.</param>
/// <param name="darkness">Whether it is dark.</param>
/// <param name="onLane">Whether the window lights the lane.</param>
/// <param name="theme">The colours of words.</param>
public sealed class DarkenedContent(IWindowContent inner, Darkness darkness, bool onLane, Theme theme) : IWindowContent, IFramePainter
{
    private readonly OverheadPainter _dark = new();
    private DarkReason? _shown;
    private PictureSize _size;

    /// <inheritdoc/>
    public IFramePainter Painter => this;

    /// <inheritdoc/>
    public TimeSpan? ChangesIn => _shown is null ? inner.ChangesIn : null;

    /// <inheritdoc/>
    public bool Refresh(PictureSize size)
    {
        var reason = darkness.Reason;
        var changed = reason != _shown;
        _shown = reason;
        if (reason is null)
        {
            // What came while it was dark is in the first picture after it.
            return inner.Refresh(size) | changed;
        }

        if (changed || size != _size)
        {
            _size = size;
            _dark.Show(reason.Picture(onLane).SceneOf((double)size.Width / size.Height, theme));
        }

        return changed;
    }

    /// <inheritdoc/>
    public void Placed(WindowPlace place) => inner.Placed(place);

    /// <inheritdoc/>
    public bool Press(KeyPress press) => inner.Press(press);

    /// <inheritdoc/>
    public void Start(GL gl)
    {
        inner.Painter.Start(gl);
        _dark.Start(gl);
    }

    /// <inheritdoc/>
    public void Paint(PictureSize size)
    {
        if (_shown is null)
        {
            inner.Painter.Paint(size);
        }
        else
        {
            _dark.Paint(size);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        inner.Dispose();
        _dark.Dispose();
    }
}
