using AimTrainer.Calibration;
using CsCheck;
using SkiaSharp;

namespace AimTrainer.Display.Tests;

/// <summary>Coverage against Skia, which draws the same shape eight times as large and is averaged; and against areas worked out by formula.</summary>
public sealed class OpenGlCoverageTests
{
    private const int Side = 100;
    private const int Finer = 8;

    /// <summary>Skia's own rounding; 1500 shapes of each kind came to 0.04 at most.</summary>
    private const double MostOfOnePixel = 0.1;

    /// <summary>Where two edges of a line cut one pixel, it counts both: in an inner corner, or where a line turns back; half a pixel is the most that can be.</summary>
    private const double MostWhereALineMeetsItself = 0.5 + MostOfOnePixel;
    private const double MostOnAverage = 0.025;

    private static readonly Gen<(double X, double Y)> _place = Gen.Select(Gen.Double[5, 95], Gen.Double[5, 95]);

    [Fact]
    public void Write_Triangles_CoverWhatSkiaCovers() => Gen.Select(_place, _place, _place).Sample(
        (a, b, c) =>
        {
            using var path = Path(a, b, c);
            Same(new Shape<ScreenPoint>.Polygon([At(a), At(b), At(c)], White), path, null, MostOfOnePixel, MostOnAverage);
        },
        iter: 100);

    [Fact]
    public void Write_Ellipses_CoverWhatSkiaCovers() => Gen.Select(_place, Gen.Double[0.5, 40], Gen.Double[0.5, 40]).Sample(
        (centre, across, along) =>
        {
            using var builder = new SKPathBuilder();
            builder.AddOval(new SKRect((float)(centre.X - across), (float)(centre.Y - along), (float)(centre.X + across), (float)(centre.Y + along)));
            using var path = builder.Detach();
            Same(new Shape<ScreenPoint>.Ellipse(At(centre), across / Side, along / Side, White), path, null, MostOfOnePixel, MostOnAverage);
        },
        iter: 60);

    [Fact]
    public void Write_StrokesThatGoOn_CoverWhatSkiaCovers() => Gen.Select(Gen.Double[10, 90].Array[2, 5], Gen.Double[0.5, 12]).Sample(
        (heights, width) => SameStroke([.. heights.Select((y, i) => (15 + (i * 70.0 / (heights.Length - 1)), y))], width, closed: false, MostWhereALineMeetsItself, MostOnAverage),
        iter: 60);

    [Fact]
    public void Write_StrokesAroundAPlace_CoverWhatSkiaCovers() => Gen.Select(Gen.Double[25, 40].Array[5, 8], Gen.Double[0.5, 8]).Sample(
        (radii, width) =>
        {
            var corners = radii.Select((radius, i) => Math.SinCos(i * 2 * Math.PI / radii.Length) is var (sine, cosine) ? (50 + (radius * cosine), 50 + (radius * sine)) : default);
            SameStroke([.. corners], width, closed: true, MostWhereALineMeetsItself, MostOnAverage);
        },
        iter: 60);

    [Fact]
    public void Write_StrokesThatTurnBackAnyhow_AreNowhereHalfAPixelTooFull() => Gen.Select(_place.List[2, 5], Gen.Double[0.5, 20], Gen.Bool).Sample(
        (points, width, closed) => SameStroke(points, width, closed, MostWhereALineMeetsItself, onAverage: 1),
        iter: 60);

    [Fact]
    public void Write_Circle_HasTheAreaOfACircle() => Gen.Select(_place, Gen.Double[0.5, 4]).Sample(
        (centre, radius) =>
        {
            var covered = Sum(Cover(new Shape<ScreenPoint>.Ellipse(At(centre), radius / Side, radius / Side, White)));
            Assert.InRange(covered / (Math.PI * radius * radius), 0.985, 1.015);
        });

    [Fact]
    public void Write_Ring_HasTheAreaOfARing() => Gen.Select(_place, Gen.Double[3, 4.5], Gen.Double[0.5, 2]).Sample(
        (centre, radius, ring) =>
        {
            var inner = radius - ring;
            var covered = Sum(Cover(new Shape<ScreenPoint>.Ellipse(At(centre), radius / Side, radius / Side, White, ring / Side)));
            Assert.InRange(covered / (Math.PI * ((radius * radius) - (inner * inner))), 0.985, 1.015);
        });

    [Fact]
    public void Write_LineThinnerThanAPixel_HasItsAreaAndNoGaps() => Gen.Select(_place, _place, Gen.Double[0.05, 0.9]).Where((a, b, _) => Math.Abs(a.Y - b.Y) > 20).Sample(
        (a, b, width) =>
        {
            var covered = Cover(new Shape<ScreenPoint>.Stroke([At(a), At(b)], width / Side, White));
            var length = Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)));

            // A byte holds no less than 1/510, which a faint line loses at its rims.
            Assert.InRange(Sum(covered), (length * width * 0.95) - (length / 255), ((length * width) + (width * width)) * 1.05 + (length / 255));
            for (var y = (int)Math.Min(a.Y, b.Y) + 2; y < Math.Max(a.Y, b.Y) - 2; y++)
            {
                Assert.True(Enumerable.Range(0, Side).Sum(x => covered[x, y]) >= (width * 0.9) - 0.02);
            }
        });

    [Fact]
    public void Write_ShapesCutByThePicture_CoverTheirPartOfIt() => Gen.Select(Gen.Double[-150, 150], Gen.Double[-150, 150], Gen.Double[1, 250], Gen.Double[1, 250]).Sample(
        (x, y, width, height) =>
        {
            double Part(double from, double size) => Math.Max(0, Math.Min(Side, from + size) - Math.Max(0, from));
            var box = new Shape<ScreenPoint>.Polygon([At((x, y)), At((x + width, y)), At((x + width, y + height)), At((x, y + height))], White);
            var area = Part(x, width) * Part(y, height);
            Assert.InRange(Sum(Cover(box)), area - 1.5, area + 1.5);
        });

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void Write_ShapesOfNoSize_CoverNothing(double size)
    {
        Assert.Equal(0, Sum(Cover(new Shape<ScreenPoint>.Ellipse(new(0.5, 0.5), size, 0.1, White))));
        Assert.Equal(0, Sum(Cover(new Shape<ScreenPoint>.Stroke([new(0.2, 0.2), new(0.8, 0.8)], size, White))));
        Assert.Equal(0, Sum(Cover(new Shape<ScreenPoint>.Stroke([], 0.1, White))));
        Assert.Equal(0, Sum(Cover(new Shape<ScreenPoint>.Polygon([new(0.2, 0.2), new(0.8, 0.8), new(0.5, 0.5)], White))));
        Assert.Equal(0, Sum(Cover(new Shape<ScreenPoint>.Writing("A", new(0.5, 0.5), size, TextAlign.Left, White))));
    }

    [Fact]
    public void Write_StrokeOfOnePlace_IsADisc() =>
        Assert.InRange(Sum(Cover(new Shape<ScreenPoint>.Stroke([new(0.5, 0.5), new(0.5, 0.5)], 0.2, White))) / (Math.PI * 100), 0.999, 1.001);

    [Fact]
    public void Write_PlaceThatIsNotANumber_ThrowsAndSaysWhichShape()
    {
        Shape<ScreenPoint>[] broken =
        [
            new Shape<ScreenPoint>.Polygon([new(0, 0), new(double.NaN, 0), new(1, 1)], White),
            new Shape<ScreenPoint>.Stroke([new(0, 0), new(1, 1)], double.PositiveInfinity, White),
            new Shape<ScreenPoint>.Ellipse(new(0, double.NaN), 1, 1, White),
            new Shape<ScreenPoint>.Writing("A", new(0, 0), double.NaN, TextAlign.Left, White),
        ];
        Assert.All(broken, shape =>
        {
            var thrown = Assert.Throws<ArgumentException>(() => Cover(new Shape<ScreenPoint>.Stroke([], 1, White), shape));
            Assert.Contains("shape 1", thrown.Message, StringComparison.Ordinal);
        });
    }

    private static Colour White => new(255, 255, 255);

    private static ScreenPoint At((double X, double Y) pixel) => new(pixel.X / Side, pixel.Y / Side);

    private static SKPath Path(params (double X, double Y)[] corners)
    {
        using var builder = new SKPathBuilder();
        builder.AddPoly([.. corners.Select(corner => new SKPoint((float)corner.X, (float)corner.Y))], close: true);
        return builder.Detach();
    }

    /// <summary>The coverage of each pixel as the GPU reads it. No two rectangles of one shape may lie on the same pixel.</summary>
    private static double[,] Cover(params Shape<ScreenPoint>[] shapes)
    {
        var size = new PictureSize(Side, Side);
        var mesh = new PictureMesh(dimming: null);
        using var lettering = new Lettering();
        new ShapeWriter<ScreenPoint, ScreenPlane>(new ScreenProjection(size), new CoverageBuilder(size), mesh, lettering).Write(new(new(0, 0, 0), [.. shapes]));
        var (covered, taken) = (new double[Side, Side], new bool[Side, Side]);
        for (var i = 0; i < mesh.Vertices.Length; i += 4)
        {
            var (first, last) = (mesh.Vertices[i], mesh.Vertices[i + 3]);
            for (var y = (int)first.Y; y < (int)last.Y; y++)
            {
                for (var x = (int)first.X; x < (int)last.X; x++)
                {
                    Assert.False(taken[x, y], $"pixel {x}, {y} is drawn twice");
                    taken[x, y] = true;
                    covered[x, y] = mesh.Coverage[first.At + (y * first.Stride) + (x * Math.Min(first.Stride, 1))] / 255.0;
                }
            }
        }

        return covered;
    }

    private static double Sum(double[,] covered) => covered.Cast<double>().Sum();

    private static void SameStroke(List<(double X, double Y)> points, double width, bool closed, double ofOnePixel, double onAverage)
    {
        using var builder = new SKPathBuilder();
        builder.MoveTo((float)points[0].X, (float)points[0].Y);
        points.Skip(1).ToList().ForEach(point => builder.LineTo((float)point.X, (float)point.Y));
        if (closed)
        {
            builder.Close();
        }

        using var path = builder.Detach();
        using var paint = new SKPaint { Style = SKPaintStyle.Stroke, StrokeWidth = (float)width, StrokeCap = SKStrokeCap.Round, StrokeJoin = SKStrokeJoin.Round };
        Same(new Shape<ScreenPoint>.Stroke([.. points.Select(At)], width / Side, White, closed), path, paint, ofOnePixel, onAverage);
    }

    private static void Same(Shape<ScreenPoint> shape, SKPath path, SKPaint? given, double ofOnePixel, double onAverage)
    {
        using var bitmap = new SKBitmap(new SKImageInfo(Side * Finer, Side * Finer, SKColorType.Gray8, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(bitmap);
        using var plain = new SKPaint();
        var paint = given ?? plain;
        (paint.IsAntialias, paint.Color) = (true, SKColors.White);
        canvas.Clear(SKColors.Black);
        canvas.Scale(Finer);
        canvas.DrawPath(path, paint);
        canvas.Flush();
        var ours = Cover(shape);
        var theirs = bitmap.GetPixelSpan();
        var (most, sum, edges) = (0.0, 0.0, 0);
        for (var y = 0; y < Side; y++)
        {
            for (var x = 0; x < Side; x++)
            {
                var their = 0.0;
                for (var row = y * Finer; row < (y + 1) * Finer; row++)
                {
                    foreach (var value in theirs.Slice((row * Side * Finer) + (x * Finer), Finer))
                    {
                        their += value / (255.0 * Finer * Finer);
                    }
                }

                var apart = Math.Abs(ours[x, y] - their);
                edges += ours[x, y] is > 0 and < 1 || their is > 0 and < 1 ? 1 : 0;
                (most, sum) = (Math.Max(most, apart), sum + apart);
            }
        }

        Assert.InRange(most, 0, ofOnePixel);
        Assert.InRange(sum / Math.Max(1, edges), 0, onAverage);
    }
}
