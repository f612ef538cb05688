using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>Lane inches (across from the right edge, down from the foul line) to the pixels of one projector.</summary>
internal sealed class LaneProjection : IProjection
{
    private const int SidesOfRegion = 16;
    private const double Tolerance = 0.02;
    private const int MostHalvings = 10;

    private readonly Homography _map;
    private readonly Lens _lens;
    private readonly XY _scale;
    private readonly HalfPlane[] _seen;
    private readonly HalfPlane[] _region;
    private readonly Viewport _viewport;
    private readonly ContourClip _clip = new();
    private readonly List<XY> _flat = [];
    private readonly List<XY> _bent = [];

    /// <param name="map">A map that <see cref="MapCheck"/> finds nothing wrong with.</param>
    /// <param name="size">The framebuffer; where it is not of the map's size, the picture is scaled to fill it.</param>
    public LaneProjection(ProjectorMap map, PictureSize size)
    {
        (_map, var seen) = MapCheck.FacingLane(map);
        _lens = new Lens(map);
        _viewport = new Viewport(size);
        _scale = new XY((double)size.Width / map.Picture.Width, (double)size.Height / map.Picture.Height);
        var (from, to) = (map.Stretch.From.Value * 12, map.Stretch.To.Value * 12);
        var nearHorizon = 1e-6 * MapCheck.WeightOf(_map, seen);
        _seen = [new(0, 1, -from), new(0, -1, to), new(_map.M31, _map.M32, _map.M33 - nearHorizon)];
        _region = RegionOf(map);
    }

    /// <inheritdoc/>
    public XY Flat(XY point)
    {
        var w = MapCheck.WeightOf(_map, point);
        return w > 0
            ? Scaled(new XY(((_map.M11 * point.X) + (_map.M12 * point.Y) + _map.M13) / w, ((_map.M21 * point.X) + (_map.M22 * point.Y) + _map.M23) / w))
            : new XY(double.NaN, double.NaN);
    }

    /// <inheritdoc/>
    public void Outline(List<XY> contour, CoverageBuilder builder)
    {
        // Cut in the plane, where the horizon is a straight line like any other: beyond it there is no pixel to speak of.
        var seen = _clip.Cut(contour, _seen);
        _flat.Clear();
        foreach (var point in seen)
        {
            var w = MapCheck.WeightOf(_map, point);
            _flat.Add(new XY(((_map.M11 * point.X) + (_map.M12 * point.Y) + _map.M13) / w, ((_map.M21 * point.X) + (_map.M22 * point.Y) + _map.M23) / w));
        }

        Finish(_flat, builder);
    }

    /// <summary>Gives the builder the edges of the whole stretch of lane that this projector lights, however wide.</summary>
    public void OutlineStretch(CoverageBuilder builder)
    {
        var back = MapCheck.Inverse(_map);
        var (from, to) = (_seen[0].C * -1, _seen[1].C);

        // A pixel's distance down the lane is Y / W of the inverse map, so the ends of the stretch are straight lines in the picture.
        HalfPlane[] ends =
        [
            new(back.M31, back.M32, back.M33),
            new(back.M21 - (from * back.M31), back.M22 - (from * back.M32), back.M23 - (from * back.M33)),
            new((to * back.M31) - back.M21, (to * back.M32) - back.M22, (to * back.M33) - back.M23),
        ];
        _flat.Clear();
        var far = 2 * _lens.Unit;
        _flat.AddRange([
            _lens.Middle + new XY(-far, -far), _lens.Middle + new XY(far, -far), _lens.Middle + new XY(far, far), _lens.Middle + new XY(-far, far)]);
        Finish([.. _clip.Cut(_flat, ends)], builder);
    }

    private void Finish(List<XY> flat, CoverageBuilder builder)
    {
        var inside = _clip.Cut(flat, _region);
        _bent.Clear();
        for (var i = 0; i < inside.Count; i++)
        {
            var (here, next) = (inside[i], inside[i + 1 == inside.Count ? 0 : i + 1]);
            var bent = _lens.Bend(here);
            _bent.Add(Scaled(bent));
            if (_lens.Bends)
            {
                BendEdge(here, next, bent, _lens.Bend(next), MostHalvings);
            }
        }

        _viewport.Outline(_bent, builder);
    }

    /// <summary>Adds the points between two, so many that no chord is further than the tolerance from the bent line.</summary>
    private void BendEdge(XY from, XY to, XY fromBent, XY toBent, int halvings)
    {
        var middle = from.Towards(to, 0.5);
        var bent = _lens.Bend(middle);
        var off = bent - fromBent.Towards(toBent, 0.5);
        if (halvings == 0 || new XY(off.X * _scale.X, off.Y * _scale.Y).Length <= Tolerance)
        {
            return;
        }

        BendEdge(from, middle, fromBent, bent, halvings - 1);
        _bent.Add(Scaled(bent));
        BendEdge(middle, to, bent, toBent, halvings - 1);
    }

    private XY Scaled(XY pixel) => new(pixel.X * _scale.X, pixel.Y * _scale.Y);

    /// <summary>Around what can reach the picture: further out a lens would fold a place back into it.</summary>
    private HalfPlane[] RegionOf(ProjectorMap map)
    {
        if (!_lens.Bends)
        {
            return [new(1, 0, map.Picture.Width), new(-1, 0, 2.0 * map.Picture.Width), new(0, 1, map.Picture.Height), new(0, -1, 2.0 * map.Picture.Height)];
        }

        var sides = new HalfPlane[SidesOfRegion];
        for (var i = 0; i < SidesOfRegion; i++)
        {
            var (sine, cosine) = Math.SinCos(i * 2 * Math.PI / SidesOfRegion);
            sides[i] = new HalfPlane(-cosine, -sine, (cosine * _lens.Middle.X) + (sine * _lens.Middle.Y) + (_lens.Reach!.Value * _lens.Unit));
        }

        return sides;
    }
}
