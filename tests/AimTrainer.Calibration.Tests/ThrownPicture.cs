using AimTrainer.Domain;

namespace AimTrainer.Calibration.Tests;

/// <summary>
/// A projector somewhere above a lane, as a pinhole: its place, where its axis meets the lane, its roll, its lens. The map is worked
/// out from that by the geometry of a camera, not by the code under test.
/// </summary>
/// <remarks>Source: Hartley and Zisserman, Multiple View Geometry in Computer Vision, section 8.1, "the plane" (from memory): H = K [r1 r2 t].</remarks>
internal sealed record ThrownPicture(ProjectorMap Map)
{
    public static PictureSize FullHd { get; } = new(1920, 1080);

    public static Inches LaneWidth { get; } = Inches.FromInches(41.5);

    /// <summary>A projector at random over a random stretch of at least 12 ft, which its picture covers.</summary>
    public static ThrownPicture At(Chance chance, LensDistortion lens = default)
    {
        while (true)
        {
            var from = chance.Between(0, 40);
            var to = Math.Min(60, from + chance.Between(12, 60));
            var (up, aside) = (chance.Between(84, 180), chance.Between(-80, 120));
            var back = (chance.Between(-10, 15) + from) * 12;
            var middle = (from + ((to - from) * chance.Between(0.2, 0.5))) * 12;
            var roll = chance.Index(4) switch { 0 => Math.PI / 2, 1 => -Math.PI / 2, 2 => Math.PI, _ => 0 } + chance.Between(-0.2, 0.2);
            var stretch = new LaneStretch(Feet.FromFeet(from), Feet.FromFeet(to), default, default);
            var picture = Of(aside, back, up, middle, roll, chance.Between(1.2, 4) * FullHd.Width, lens, stretch);
            if (picture.LitShare() > 0.4)
            {
                return picture;
            }
        }
    }

    /// <summary>A projector in a place.</summary>
    /// <param name="aside">Inches from the right edge, positive to the left.</param>
    /// <param name="back">Inches past the foul line.</param>
    /// <param name="up">Inches over the lane.</param>
    /// <param name="middle">Where its axis meets the middle of the lane, in inches past the foul line.</param>
    /// <param name="roll">Turned about its axis, in radians.</param>
    /// <param name="focal">Focal length in pixels.</param>
    /// <param name="lens">The lens.</param>
    /// <param name="stretch">The stretch.</param>
    public static ThrownPicture Of(double aside, double back, double up, double middle, double roll, double focal, LensDistortion lens, LaneStretch stretch)
    {
        // The axes of the lane (across to the left, down the lane, up) make a left-handed set: for a look down the lane this gives
        // "right" the direction of fewer inches across, as it is, and "below" the direction to the floor.
        double[] place = [aside, back, up];
        var forward = Unit([20.75 - aside, middle - back, -up]);
        var right = Unit(Cross([0, 0, 1], forward));
        var below = Cross(right, forward);
        var (c, s) = (Math.Cos(roll), Math.Sin(roll));
        double[] u = [.. right.Zip(below, (r, b) => (c * r) + (s * b))], v = [.. right.Zip(below, (r, b) => (c * b) - (s * r))];
        var (cx, cy) = (FullHd.Width / 2.0, FullHd.Height / 2.0);
        double[] Row(double[] axis, double centre) => [.. axis.Zip(forward, (a, f) => (focal * a) + (centre * f))];
        var (row1, row2) = (Row(u, cx), Row(v, cy));
        double Last(double[] row) => -row.Zip(place, (a, b) => a * b).Sum();
        var matrix = new Homography(row1[0], row1[1], Last(row1), row2[0], row2[1], Last(row2), forward[0], forward[1], Last(forward));
        return new ThrownPicture(new ProjectorMap { Picture = FullHd, Homography = matrix, Distortion = lens, Stretch = stretch });
    }

    /// <summary>A place of the stretch, on the lane, that lies in the picture.</summary>
    public LanePoint Place(Chance chance)
    {
        while (true)
        {
            var point = Anywhere(chance);
            if (IsLit(point))
            {
                return point;
            }
        }
    }

    /// <summary>Marks at random, spread so that they settle a map: the first four near the corners of what is lit.</summary>
    public List<CalibrationMark> Marks(Chance chance, int count, double noise = 0)
    {
        var lit = Enumerable.Range(0, 400).Select(_ => Place(chance)).ToList();
        List<LanePoint> places =
        [
            lit.MinBy(point => Share(point) + Along(point)), lit.MinBy(point => Along(point) - Share(point)),
            lit.MaxBy(point => Along(point) - Share(point)), lit.MaxBy(point => Share(point) + Along(point)),
        ];
        foreach (var point in lit)
        {
            if (places.Count < count && places.TrueForAll(place => IsApart(place, point)))
            {
                places.Add(point);
            }
        }

        return [.. places.Select(place => new CalibrationMark(place, Shaken(Map.PixelOf(place), chance, noise)))];
    }

    private bool IsApart(LanePoint a, LanePoint b)
    {
        var (p, q) = (Map.PixelOf(a), Map.PixelOf(b));
        return Math.Abs(a.Across.Value - b.Across.Value) + Math.Abs(a.Down.Value - b.Down.Value) > 0.5 && Math.Abs(p.X - q.X) + Math.Abs(p.Y - q.Y) > 2;
    }

    private double LitShare()
    {
        var lit = 0;
        foreach (var across in (ReadOnlySpan<double>)[0, 10, 20, 30, 41.5])
        {
            for (var i = 0; i <= 8; i++)
            {
                lit += IsLit(new LanePoint(Inches.FromInches(across), Feet.FromFeet(Map.Stretch.From.Value + ((Map.Stretch.To.Value - Map.Stretch.From.Value) * i / 8)))) ? 1 : 0;
            }
        }

        return lit / 45.0;
    }

    private bool IsLit(LanePoint point) =>
        Map.Homography.Third(point.Across.Value, point.Down.Value * 12) > 1 && IsWithinReach(point) && Map.Picture.Contains(Map.PixelOf(point));

    /// <summary>The formula of a lens that bends inward would bring places far beside the picture back into it; no lens does.</summary>
    private bool IsWithinReach(LanePoint point)
    {
        var (x, y) = Map.Homography.Apply(point.Across.Value, point.Down.Value * 12);
        return Math.Abs(x - 960) < 1.5 * 960 && Math.Abs(y - 540) < 1.5 * 960;
    }

    private LanePoint Anywhere(Chance chance) =>
        new(Inches.FromInches(chance.Between(0, 41.5)), Feet.FromFeet(chance.Between(Map.Stretch.From.Value, Map.Stretch.To.Value)));

    private static double Share(LanePoint point) => point.Across.Value / 41.5;

    private double Along(LanePoint point) => (point.Down.Value - Map.Stretch.From.Value) / (Map.Stretch.To.Value - Map.Stretch.From.Value);

    private static ProjectorPixel Shaken(ProjectorPixel pixel, Chance chance, double noise) => noise == 0
        ? pixel
        : new ProjectorPixel(
            Math.Clamp(pixel.X + (noise * chance.Normal()), 0, FullHd.Width), Math.Clamp(pixel.Y + (noise * chance.Normal()), 0, FullHd.Height));

    private static double[] Cross(double[] a, double[] b) =>
        [(a[1] * b[2]) - (a[2] * b[1]), (a[2] * b[0]) - (a[0] * b[2]), (a[0] * b[1]) - (a[1] * b[0])];

    private static double[] Unit(double[] a)
    {
        var length = Math.Sqrt(a.Sum(value => value * value));
        return [.. a.Select(value => value / length)];
    }
}
