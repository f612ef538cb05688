using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>Draws scenes of a screen. All calls come on the thread that holds the GL context.</summary>
public sealed class OverheadPainter : ScenePainter
{
    private Scene<ScreenPoint> _scene = new(new Colour(0, 0, 0), []);

    /// <summary>From the next frame on, this is shown.</summary>
    /// <param name="scene">The scene; the same one again costs nothing.</param>
    public void Show(Scene<ScreenPoint> scene)
    {
        ArgumentNullException.ThrowIfNull(scene);
        if (!ReferenceEquals(scene, _scene) && !scene.Equals(_scene))
        {
            _scene = scene;
            Renew();
        }
    }

    private protected override LinearColour WorkOut(PictureSize size, CoverageBuilder builder, PictureMesh mesh, Lettering lettering)
    {
        new ShapeWriter<ScreenPoint, ScreenPlane>(new ScreenProjection(size), builder, mesh, lettering).Write(_scene);
        return LinearColour.Of(_scene.Background);
    }
}
