using AimTrainer.Calibration;
using Silk.NET.OpenGL;

namespace AimTrainer.Display;

/// <summary>The screen above a lane.</summary>
/// <param name="news">What it shows.</param>
/// <param name="theme">Its colours.</param>
/// <param name="clock">The time.</param>
public sealed class OverheadContent(NewsSlot news, Theme theme, TimeProvider clock) : SessionContent(news, clock)
{
    private readonly OverheadPainter _painter = new();

    private protected override TimeSpan? ResultFor => null;

    /// <summary>The scene for a picture of a size: fitted into it when the picture is narrower or wider than screens are.</summary>
    public static Scene<ScreenPoint> SceneOf(DisplayNews news, PictureSize size, TimeSpan? sinceShot, bool cleared, Theme theme)
    {
        var aspect = (double)size.Width / size.Height;
        var fitting = Math.Clamp(aspect, OverheadSceneInput.Narrowest, OverheadSceneInput.Widest);
        var scene = OverheadScene.Build(new OverheadSceneInput { Snapshot = news.Snapshot, Aspect = fitting, SinceShot = sinceShot, Cleared = cleared, Theme = theme });
        return SceneFit.Into(SourceNotice.On(scene, news, fitting, theme), fitting, aspect);
    }

    /// <inheritdoc/>
    public override void Start(GL gl) => _painter.Start(gl);

    /// <inheritdoc/>
    public override void Paint(PictureSize size) => _painter.Paint(size);

    /// <inheritdoc/>
    public override void Dispose() => _painter.Dispose();

    private protected override void Build(DisplayNews news, PictureSize size, TimeSpan? sinceShot, bool cleared) =>
        _painter.Show(SceneOf(news, size, sinceShot, cleared, theme));
}
