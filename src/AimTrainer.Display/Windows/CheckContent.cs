using AimTrainer.Calibration;
using AimTrainer.Domain;
using Silk.NET.OpenGL;

namespace AimTrainer.Display;

/// <summary>The check picture over a saved map; a map that is saved meanwhile is taken within a second.</summary>
/// <param name="maps">The map for a place and a size.</param>
/// <param name="lane">The lane with its marks.</param>
/// <param name="theme">The colours.</param>
public sealed class CheckContent(Func<WindowPlace, PictureSize, MapChoice> maps, LaneProfile lane, Theme theme) : IWindowContent, IFramePainter
{
    private readonly OverheadPainter _painter = new();
    private WindowPlace? _place;
    private MapChoice? _seen;
    private PictureSize _size;

    /// <inheritdoc/>
    public IFramePainter Painter => this;

    /// <inheritdoc/>
    public TimeSpan? ChangesIn => null;

    /// <inheritdoc/>
    public bool Refresh(PictureSize size)
    {
        var choice = maps(_place!, size);
        if (ReferenceEquals(choice, _seen) && size == _size)
        {
            return false;
        }

        (_seen, _size) = (choice, size);
        var drawn = choice.For(lane);
        _painter.Show(drawn.Map is { } map
            ? SceneFit.Into(
                CheckScene.Build(map, lane, theme, "Check picture", ["Esc closes it."]), (double)map.Picture.Width / map.Picture.Height, (double)size.Width / size.Height)
            : ProjectorContent.NoMapScene(size, theme, drawn.Why));
        return true;
    }

    /// <inheritdoc/>
    public void Placed(WindowPlace place) => (_place, _seen) = (place, null);

    /// <inheritdoc/>
    public bool Press(KeyPress press) => press.Key != ConsoleKey.Escape;

    /// <inheritdoc/>
    public void Start(GL gl) => _painter.Start(gl);

    /// <inheritdoc/>
    public void Paint(PictureSize size) => _painter.Paint(size);

    /// <inheritdoc/>
    public void Dispose() => _painter.Dispose();
}
