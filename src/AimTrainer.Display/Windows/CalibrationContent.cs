using AimTrainer.Calibration;
using Silk.NET.OpenGL;

namespace AimTrainer.Display;

/// <summary>The window in which somebody places marks; afterwards it shows the check picture.</summary>
/// <param name="desk">The calibration.</param>
/// <param name="theme">The colours.</param>
public sealed class CalibrationContent(CalibrationDesk desk, Theme theme) : IWindowContent, IFramePainter
{
    private readonly OverheadPainter _painter = new();
    private CalibrationView? _seen;
    private PictureSize _size;

    /// <inheritdoc/>
    public IFramePainter Painter => this;

    /// <inheritdoc/>
    public TimeSpan? ChangesIn => null;

    /// <inheritdoc/>
    public bool Refresh(PictureSize size)
    {
        var now = desk.Now;
        if (ReferenceEquals(now, _seen) && size == _size)
        {
            return false;
        }

        (_seen, _size) = (now, size);
        var picture = now.Placing.Fitting.Picture;
        _painter.Show(SceneFit.Into(CalibrationScene.Build(now, theme), (double)picture.Width / picture.Height, (double)size.Width / size.Height));
        return true;
    }

    /// <inheritdoc/>
    public void Placed(WindowPlace place) => desk.Placed(
        place.Size, place is { Borderless: true, Monitor: { } monitor } ? new MonitorMode(monitor.NameForMaps, monitor.Mode, monitor.RefreshHertz) : null, place.Missing);

    /// <inheritdoc/>
    public bool Press(KeyPress press)
    {
        var placing = desk.Now.Placing;
        if (PlacingKeys.ActionFor(press.Key, press.Shift, placing) is { } action && (action is PlacingAction.Nudge || !press.Repeats))
        {
            desk.Apply(action is PlacingAction.Set && placing.Phase != PlacingPhase.Placing ? new PlacingAction.Accept() : action);
        }

        return !desk.Over.IsCompleted;
    }

    /// <inheritdoc/>
    public void Start(GL gl) => _painter.Start(gl);

    /// <inheritdoc/>
    public void Paint(PictureSize size) => _painter.Paint(size);

    /// <inheritdoc/>
    public void Dispose() => _painter.Dispose();
}
