using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Display.Tests;

/// <summary>
/// Where a four-cornered target lies in a picture, by the map's own <see cref="ProjectorMap.PixelOf"/> at many points of its rim: what the
/// renderer is held against.
/// </summary>
internal sealed class OpenGlOutline
{
    private const int PointsOfSide = 300;

    private readonly List<(double X, double Y, int Side)> _rim = [];

    public OpenGlOutline(ProjectorMap map, LanePoint[] corners)
    {
        for (var side = 0; side < corners.Length; side++)
        {
            var (from, to) = (corners[side], corners[(side + 1) % corners.Length]);
            for (var i = 0; i < PointsOfSide; i++)
            {
                var part = (double)i / PointsOfSide;
                var pixel = map.PixelOf(new LanePoint(
                    Inches.FromInches(from.Across.Value + ((to.Across.Value - from.Across.Value) * part)),
                    Feet.FromFeet(from.Down.Value + ((to.Down.Value - from.Down.Value) * part))));
                _rim.Add((pixel.X, pixel.Y, side));
            }
        }
    }

    public (double Left, double Top, double Right, double Bottom) Bounds =>
        (_rim.Min(p => p.X), _rim.Min(p => p.Y), _rim.Max(p => p.X), _rim.Max(p => p.Y));

    /// <summary>Area and centroid. Source: the shoelace formula.</summary>
    public (double Area, double X, double Y) Weigh()
    {
        var (area, x, y) = (0.0, 0.0, 0.0);
        for (var i = 0; i < _rim.Count; i++)
        {
            var (here, next) = (_rim[i], _rim[(i + 1) % _rim.Count]);
            var cross = (here.X * next.Y) - (next.X * here.Y);
            (area, x, y) = (area + (cross / 2), x + ((here.X + next.X) * cross / 6), y + ((here.Y + next.Y) * cross / 6));
        }

        return (Math.Abs(area), x / area, y / area);
    }

    /// <summary>
    /// Where the rim crosses a row (or column) of pixels: at its middle, both ends. Null where fewer or more than two sides pass from one
    /// border of the row to the other, or where a side runs more along the row than across it.
    /// </summary>
    public (double From, double To)? Crossings(bool alongRow, int line)
    {
        (double Along, int Side)[] At(double height)
        {
            var found = new List<(double, int)>();
            for (var i = 0; i < _rim.Count; i++)
            {
                var (here, next) = (_rim[i], _rim[(i + 1) % _rim.Count]);
                var (a, b) = alongRow ? (here.Y, next.Y) : (here.X, next.X);
                if ((a <= height) != (b <= height))
                {
                    var (from, to) = alongRow ? (here.X, next.X) : (here.Y, next.Y);
                    found.Add((from + ((to - from) * (height - a) / (b - a)), here.Side));
                }
            }

            return [.. found.Order()];
        }

        var (top, middle, bottom) = (At(line), At(line + 0.5), At(line + 1));
        bool Same(int i) => top[i].Side == middle[i].Side && middle[i].Side == bottom[i].Side && Math.Abs(top[i].Along - bottom[i].Along) <= 1;
        return top.Length == 2 && middle.Length == 2 && bottom.Length == 2 && Same(0) && Same(1) ? (middle[0].Along, middle[1].Along) : null;
    }
}
