namespace AimTrainer.Display;

/// <summary>Works out the shapes of a scene down to the pixels of one framebuffer.</summary>
internal sealed class ShapeWriter<TPoint, TPlane>
    where TPoint : struct
    where TPlane : struct, IPlane<TPoint>
{
    private readonly IProjection _projection;
    private readonly CoverageBuilder _builder;
    private readonly PictureMesh _mesh;
    private readonly Lettering _lettering;
    private readonly CurveCutter _cutter;
    private readonly StrokeOutline _stroke;
    private readonly Action<List<XY>> _outline;
    private readonly List<XY> _contour = [];

    public ShapeWriter(IProjection projection, CoverageBuilder builder, PictureMesh mesh, Lettering lettering)
    {
        (_projection, _builder, _mesh, _lettering) = (projection, builder, mesh, lettering);
        _cutter = new CurveCutter(projection);
        _stroke = new StrokeOutline(_cutter);
        _outline = contour => _projection.Outline(contour, _builder);
    }

    /// <summary>Writes every shape, the last on top.</summary>
    /// <exception cref="ArgumentException">A shape has a size that is not a finite number; it says which.</exception>
    public void Write(Scene<TPoint> scene)
    {
        for (var i = 0; i < scene.Shapes.Count; i++)
        {
            if (!TryWrite(scene.Shapes[i]))
            {
                throw new ArgumentException(
                    FormattableString.Invariant($"shape {i} of the scene has a place or size that is not a finite number: {scene.Shapes[i]}"), nameof(scene));
            }
        }
    }

    private bool TryWrite(Shape<TPoint> shape)
    {
        var isFinite = shape switch
        {
            Shape<TPoint>.Polygon polygon => Outline(polygon),
            Shape<TPoint>.Stroke stroke => Outline(stroke),
            Shape<TPoint>.Ellipse ellipse => Outline(ellipse),
            Shape<TPoint>.Writing writing => Outline(writing),
            _ => throw new ArgumentException($"a shape of a kind that nobody can draw: {shape.GetType().Name}", nameof(shape)),
        };
        _builder.Write(_mesh, MeshColour.Of(shape.Colour));
        return isFinite;
    }

    private bool Outline(Shape<TPoint>.Polygon polygon)
    {
        _contour.Clear();
        return AddAll(polygon.Corners.AsSpan()) && Done();
    }

    private bool Outline(Shape<TPoint>.Stroke stroke)
    {
        _contour.Clear();
        if (!AddAll(stroke.Points.AsSpan()) || !double.IsFinite(stroke.Width))
        {
            return false;
        }

        if (_contour.Count > 0 && stroke.Width > 0)
        {
            _stroke.Of([.. _contour], stroke.Width, stroke.Closed, _outline);
        }

        return true;
    }

    private bool Outline(Shape<TPoint>.Ellipse ellipse)
    {
        var centre = default(TPlane).Of(ellipse.Centre);
        var radii = new XY(ellipse.RadiusAcross, ellipse.RadiusAlong);
        if (!centre.IsFinite || !radii.IsFinite || !double.IsFinite(ellipse.RingWidth))
        {
            return false;
        }

        Ring(centre, radii, 2 * Math.PI);
        if (ellipse.RingWidth > 0)
        {
            Ring(centre, radii - new XY(ellipse.RingWidth, ellipse.RingWidth), -2 * Math.PI);
        }

        return true;
    }

    private void Ring(XY centre, XY radii, double turn)
    {
        if (radii.X > 0 && radii.Y > 0)
        {
            _contour.Clear();
            _cutter.Cut(new ArcCurve(centre, radii, 0, turn), 8, _contour);
            _outline(_contour);
        }
    }

    private bool Outline(Shape<TPoint>.Writing writing)
    {
        var anchor = default(TPlane).Of(writing.Anchor);
        if (!anchor.IsFinite || !double.IsFinite(writing.Size) || !double.IsFinite(writing.Stretch))
        {
            return false;
        }

        if (!(writing.Size > 0) || !(writing.Stretch > 0))
        {
            return true;
        }

        var (right, up) = (default(TPlane).Right * writing.Size, default(TPlane).Up * (writing.Size * writing.Stretch));
        var start = writing.Align switch
        {
            TextAlign.Middle => -_lettering.WidthOf(writing.Text, writing.Bold) / 2,
            TextAlign.Right => -_lettering.WidthOf(writing.Text, writing.Bold),
            _ => 0,
        };
        var pen = anchor + (right * start);
        foreach (var rune in writing.Text.EnumerateRunes())
        {
            var glyph = _lettering.GlyphOf(rune, writing.Bold);
            foreach (var contour in glyph.Contours)
            {
                _contour.Clear();
                foreach (var (p0, p1, p2, p3, isLine) in contour)
                {
                    XY Place(XY point) => pen + (right * point.X) + (up * point.Y);
                    if (isLine)
                    {
                        _contour.Add(Place(p0));
                    }
                    else
                    {
                        _cutter.Cut(new BezierCurve(Place(p0), Place(p1), Place(p2), Place(p3)), 2, _contour);
                    }
                }

                _outline(_contour);
            }

            pen += right * glyph.Advance;
        }

        return true;
    }

    private bool AddAll(ReadOnlySpan<TPoint> points)
    {
        foreach (var point in points)
        {
            var place = default(TPlane).Of(point);
            if (!place.IsFinite)
            {
                return false;
            }

            _contour.Add(place);
        }

        return true;
    }

    private bool Done()
    {
        _outline(_contour);
        return true;
    }
}
