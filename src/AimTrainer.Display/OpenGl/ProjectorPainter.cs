using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>
/// Draws scenes of the lane through a projector's map; black until it has one. All calls come on the thread that holds the GL context.
/// </summary>
public sealed class ProjectorPainter : ScenePainter
{
    private Scene<LanePoint>? _scene;
    private ProjectorMap? _map;

    /// <summary>From the next frame on, this is shown. Outside the stretch that the map lights the picture is black.</summary>
    /// <param name="scene">The scene; the same one again costs nothing.</param>
    /// <param name="map">Where the lane lies in the picture; a framebuffer of another size shows the picture scaled to it.</param>
    /// <exception cref="ArgumentException"><see cref="MapCheck.ProblemOf"/> finds something wrong with the map.</exception>
    public void Show(Scene<LanePoint> scene, ProjectorMap map)
    {
        ArgumentNullException.ThrowIfNull(scene);
        if (!ReferenceEquals(map, _map) && MapCheck.ProblemOf(map) is { } problem)
        {
            throw new ArgumentException(problem, nameof(map));
        }

        if (!ReferenceEquals(map, _map) || (!ReferenceEquals(scene, _scene) && !scene.Equals(_scene)))
        {
            (_scene, _map) = (scene, map);
            Renew();
        }
    }

    private protected override Dimming? DimmingOf(PictureSize size) => _map is not null && Dimming.IsNeededFor(_map)
        ? new Dimming(_map, new XY((double)_map.Picture.Width / size.Width, (double)_map.Picture.Height / size.Height))
        : null;

    private protected override LinearColour WorkOut(PictureSize size, CoverageBuilder builder, PictureMesh mesh, Lettering lettering)
    {
        var black = LinearColour.Of(new Colour(0, 0, 0));
        if (_scene is null || _map is null)
        {
            return black;
        }

        var projection = new LaneProjection(_map, size);
        if (_scene.Background is not { Red: 0, Green: 0, Blue: 0 })
        {
            projection.OutlineStretch(builder);
            builder.Write(mesh, MeshColour.Of(_scene.Background));
        }

        new ShapeWriter<LanePoint, LanePlane>(projection, builder, mesh, lettering).Write(_scene);
        return black;
    }
}
