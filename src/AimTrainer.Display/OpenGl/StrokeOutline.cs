namespace AimTrainer.Display;

/// <summary>The outline of a line with round ends and corners.</summary>
/// <remarks>
/// Along each side the outline follows the offset of every piece; at a corner the outer side takes the arc and the inner side goes through
/// the corner itself. With non-zero winding that encloses exactly the union of the pieces and their round corners.
/// </remarks>
internal sealed class StrokeOutline(CurveCutter cutter)
{
    private readonly List<XY> _points = [];
    private readonly List<XY> _contour = [];

    /// <summary>Calls for every closed contour of the outline; the list is valid during the call.</summary>
    public void Of(ReadOnlySpan<XY> points, double width, bool closed, Action<List<XY>> contour)
    {
        _points.Clear();
        foreach (var point in points)
        {
            if (_points.Count == 0 || _points[^1] != point)
            {
                _points.Add(point);
            }
        }

        if (closed && _points.Count > 1 && _points[^1] == _points[0])
        {
            _points.RemoveAt(_points.Count - 1);
        }

        var half = width / 2;
        _contour.Clear();
        if (_points.Count == 1)
        {
            cutter.Cut(new ArcCurve(_points[0], new XY(half, half), 0, 2 * Math.PI), 8, _contour);
            contour(_contour);
            return;
        }

        if (closed && _points.Count > 2)
        {
            Side(half, closed: true);
            contour(_contour);
            _contour.Clear();
            _points.Reverse();
            Side(half, closed: true);
            contour(_contour);
            return;
        }

        Side(half, closed: false);
        Cap(_points[^2], _points[^1], half);
        _points.Reverse();
        Side(half, closed: false);
        Cap(_points[^2], _points[^1], half);
        contour(_contour);
    }

    /// <summary>The left side of the points, as one goes along them with y up.</summary>
    private void Side(double half, bool closed)
    {
        var count = _points.Count;
        var pieces = closed ? count : count - 1;
        for (var i = 0; i < pieces; i++)
        {
            var (from, to) = (_points[i], _points[(i + 1) % count]);
            var normal = NormalOf(from, to, half);
            _contour.Add(from + normal);
            _contour.Add(to + normal);
            if (closed || i + 1 < pieces)
            {
                Corner(to, normal, NormalOf(to, _points[(i + 2) % count], half), half);
            }
        }
    }

    private void Corner(XY at, XY normal, XY next, double half)
    {
        var cross = (normal.X * next.Y) - (normal.Y * next.X);
        var along = (normal.X * next.X) + (normal.Y * next.Y);
        if (cross > 0 || (cross == 0 && along >= 0))
        {
            _contour.Add(at);
            return;
        }

        Arc(at, normal, -Math.Acos(Math.Clamp(along / (half * half), -1, 1)), half);
    }

    private void Cap(XY from, XY to, double half) => Arc(to, NormalOf(from, to, half), -Math.PI, half);

    private void Arc(XY at, XY normal, double turn, double half) =>
        cutter.Cut(new ArcCurve(at, new XY(half, half), Math.Atan2(normal.Y, normal.X), turn), 4, _contour);

    private static XY NormalOf(XY from, XY to, double half)
    {
        var along = to - from;
        return new XY(-along.Y, along.X) * (half / along.Length);
    }
}
