using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Display.Tests;

/// <summary>Maps and scenes of about the size that the display draws, made up for these tests.</summary>
internal static class OpenGlSamples
{
    public const double BoardWidth = 41.5 / 39;

    public static PictureSize FullHd { get; } = new(1920, 1080);

    /// <summary>Twelve ways that a projector can stand.</summary>
    public static IReadOnlyDictionary<string, ProjectorMap> Maps { get; } = new Dictionary<string, ProjectorMap>
    {
        // The lane's corners (right edge and left edge, near and far) as pixels: bowlers see across grow to the left.
        ["straight, from above the bowler"] = Map(0, 60, (1400, 1040), (520, 1040), (1080, 60), (840, 60)),
        ["straight down, no perspective"] = Map(0, 20, (1560, 1060), (360, 1060), (1560, 20), (360, 20)),
        ["keystoned to the left"] = Map(0, 60, (1250, 1050), (300, 980), (820, 120), (600, 90)),
        ["keystoned to the right"] = Map(0, 60, (1650, 970), (650, 1060), (1330, 80), (1100, 110)),
        ["rolled by ten degrees"] = Rolled(Map(0, 60, (1350, 1000), (560, 1000), (1080, 100), (840, 100)), 10),
        ["upside down, from the ceiling"] = Map(0, 60, (520, 40), (1400, 40), (840, 1020), (1080, 1020)),
        ["sideways, from the wall"] = Map(5, 50, (80, 900), (150, 300), (1820, 660), (1850, 420)),
        ["long throw at the far end"] = Map(40, 60, (1290, 1030), (630, 1030), (1160, 50), (760, 50)),
        ["near part from the foul line"] = Map(0, 20, (1700, 1060), (220, 1060), (1250, 40), (670, 40)),
        ["barrel lens"] = Map(0, 60, (1400, 1020), (520, 1020), (1100, 80), (820, 80)) with { Distortion = new(-0.06, 0.01) },
        ["pincushion lens, keystoned"] = Map(0, 60, (1300, 1000), (350, 960), (900, 150), (680, 130)) with { Distortion = new(0.08, 0.02) },
        ["barrel lens, long throw, rolled"] = Rolled(Map(35, 60, (1290, 980), (630, 980), (1130, 100), (790, 100)), -7) with { Distortion = new(-0.08, 0) },
    };

    /// <summary>A map by where four corners of a stretch of lane lie: right and left at its near end, right and left at its far end.</summary>
    public static ProjectorMap Map(double near, double far, params (double X, double Y)[] pixels)
    {
        (double X, double Y)[] lane = [(0, near * 12), (41.5, near * 12), (0, far * 12), (41.5, far * 12)];
        return new ProjectorMap { Picture = FullHd, Homography = Through(lane, pixels) };
    }

    /// <summary>A board-wide (or wider) target: a rectangle of lane, as long as it is drawn.</summary>
    public static LanePoint[] Target(double board, double boards, double feet, double length)
    {
        var (right, left) = ((board - 0.5 - (boards / 2)) * BoardWidth, (board - 0.5 + (boards / 2)) * BoardWidth);
        var (near, far) = (feet - (length / 2), feet + (length / 2));
        return [At(right, near), At(left, near), At(left, far), At(right, far)];
    }

    public static Shape<LanePoint>.Polygon Fill(Colour colour, params LanePoint[] corners) => new([.. corners], colour);

    public static LanePoint At(double inches, double feet) => new(Inches.FromInches(inches), Feet.FromFeet(feet));

    /// <summary>A lane with its boards, marks, a target, a trail and ten shots, and some writing: about as much as the real scene.</summary>
    public static Scene<LanePoint> Lane()
    {
        var shapes = new List<Shape<LanePoint>> { Fill(new(10, 12, 20), At(0, 0), At(41.5, 0), At(41.5, 60), At(0, 60)) };
        for (var board = 1; board < 39; board++)
        {
            var colour = board % 5 == 0 ? new Colour(70, 80, 110) : new Colour(30, 34, 48);
            shapes.Add(new Shape<LanePoint>.Stroke([At(board * BoardWidth, 0), At(board * BoardWidth, 60)], board % 5 == 0 ? 0.3 : 0.15, colour));
        }

        for (var arrow = 1; arrow <= 7; arrow++)
        {
            var (board, feet) = (arrow * 5, 16 - Math.Abs(arrow - 4));
            var across = (board - 0.5) * BoardWidth;
            shapes.Add(Fill(new(200, 200, 210), At(across - 0.6, feet - 0.5), At(across + 0.6, feet - 0.5), At(across, feet)));
        }

        shapes.Add(Fill(new(0, 170, 255), Target(17, 3, 15, 4)));
        shapes.Add(Fill(new(0, 170, 255, 128), Target(10, 3, 42, 10)));
        shapes.Add(new Shape<LanePoint>.Stroke([At(14, 0), At(17.5, 15), At(10, 42), At(19, 60)], 0.6, new(255, 200, 60, 160)));
        for (var shot = 0; shot < 10; shot++)
        {
            shapes.Add(new Shape<LanePoint>.Ellipse(At(8 + (shot * 2.3), 15 + (shot % 3)), 0.8, 5, new(255, 255, 255, 200), shot % 2 == 0 ? 0.3 : 0));
        }

        for (var i = 0; i < 15; i++)
        {
            shapes.Add(new Shape<LanePoint>.Writing($"{i * 5} ft ← {i}", At(20, i * 4), 3, TextAlign.Middle, new(255, 255, 255), i % 2 == 0, Stretch: 4));
        }

        return new Scene<LanePoint>(new(0, 0, 0), [.. shapes]);
    }

    /// <summary>A screen with panels, bars, a lane and writing in several sizes.</summary>
    public static Scene<ScreenPoint> Screen()
    {
        var shapes = new List<Shape<ScreenPoint>>();
        void Box(double x, double y, double width, double height, Colour colour) =>
            shapes.Add(new Shape<ScreenPoint>.Polygon([new(x, y), new(x + width, y), new(x + width, y + height), new(x, y + height)], colour));

        Box(0.04, 0.04, 0.5, 0.92, new(24, 28, 40));
        Box(0.58, 0.04, 1.15, 0.42, new(24, 28, 40));
        Box(0.58, 0.5, 1.15, 0.46, new(24, 28, 40));
        for (var board = 0; board <= 39; board++)
        {
            var x = 0.07 + (board * 0.44 / 39);
            shapes.Add(new Shape<ScreenPoint>.Stroke([new(x, 0.08), new(x, 0.92)], board % 5 == 0 ? 0.002 : 0.001, new(70, 80, 110)));
        }

        Box(0.2, 0.3, 0.05, 0.1, new(0, 170, 255));
        for (var shot = 0; shot < 10; shot++)
        {
            shapes.Add(new Shape<ScreenPoint>.Ellipse(new(0.65 + (shot * 0.11), 0.56), 0.03, 0.03, new(255, 200, 60), shot % 2 == 0 ? 0.008 : 0));
            shapes.Add(new Shape<ScreenPoint>.Writing($"{shot + 1}", new(0.65 + (shot * 0.11), 0.65), 0.035, TextAlign.Middle, new(255, 255, 255)));
        }

        shapes.Add(new Shape<ScreenPoint>.Writing("17.5", new(1.15, 0.27), 0.16, TextAlign.Middle, new(255, 255, 255), Bold: true));
        shapes.Add(new Shape<ScreenPoint>.Writing("board 17 at 15 ft · half a board inside →", new(1.15, 0.4), 0.035, TextAlign.Middle, new(255, 255, 255)));
        shapes.Add(new Shape<ScreenPoint>.Writing("held 6 of 10 (31 % – 83 %)", new(0.62, 0.78), 0.05, TextAlign.Left, new(255, 255, 255)));
        shapes.Add(new Shape<ScreenPoint>.Writing("±½ × 3° — ↑↓", new(1.7, 0.88), 0.04, TextAlign.Right, new(255, 200, 60), Bold: true));
        return new Scene<ScreenPoint>(new(8, 10, 16), [.. shapes]);
    }

    /// <summary>Turned about the middle of the picture.</summary>
    private static ProjectorMap Rolled(ProjectorMap map, double degrees)
    {
        var (sine, cosine) = Math.SinCos(degrees * Math.PI / 180);
        var (x, y) = (map.Picture.Width / 2.0, map.Picture.Height / 2.0);
        var h = map.Homography;

        // (u, v) -> middle + turn (u - x, v - y), written on the rows of the matrix.
        var (u0, v0) = (x - (cosine * x) + (sine * y), y - (sine * x) - (cosine * y));
        return map with
        {
            Homography = new(
                (cosine * h.M11) - (sine * h.M21) + (u0 * h.M31), (cosine * h.M12) - (sine * h.M22) + (u0 * h.M32), (cosine * h.M13) - (sine * h.M23) + (u0 * h.M33),
                (sine * h.M11) + (cosine * h.M21) + (v0 * h.M31), (sine * h.M12) + (cosine * h.M22) + (v0 * h.M32), (sine * h.M13) + (cosine * h.M23) + (v0 * h.M33),
                h.M31, h.M32, h.M33),
        };
    }

    /// <summary>The homography through four points: eight equations, solved by elimination. Source: Hartley and Zisserman, Multiple View Geometry, 4.1.</summary>
    private static Homography Through((double X, double Y)[] from, (double X, double Y)[] to)
    {
        var rows = new double[8, 9];
        for (var i = 0; i < 4; i++)
        {
            var ((x, y), (u, v)) = (from[i], to[i]);
            double[] first = [x, y, 1, 0, 0, 0, -u * x, -u * y, u];
            double[] second = [0, 0, 0, x, y, 1, -v * x, -v * y, v];
            for (var j = 0; j < 9; j++)
            {
                (rows[2 * i, j], rows[(2 * i) + 1, j]) = (first[j], second[j]);
            }
        }

        for (var column = 0; column < 8; column++)
        {
            var best = Enumerable.Range(column, 8 - column).MaxBy(row => Math.Abs(rows[row, column]));
            for (var j = 0; j < 9; j++)
            {
                (rows[column, j], rows[best, j]) = (rows[best, j], rows[column, j]);
            }

            for (var row = 0; row < 8; row++)
            {
                var factor = row == column ? 0 : rows[row, column] / rows[column, column];
                for (var j = column; j < 9; j++)
                {
                    rows[row, j] -= factor * rows[column, j];
                }
            }
        }

        double H(int i) => rows[i, 8] / rows[i, i];
        return new(H(0), H(1), H(2), H(3), H(4), H(5), H(6), H(7), 1);
    }
}
