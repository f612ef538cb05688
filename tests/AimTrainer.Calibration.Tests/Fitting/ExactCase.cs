using AimTrainer.Domain;

namespace AimTrainer.Calibration.Tests;

/// <summary>
/// A map at random whose marks are exact in single precision. OpenCV takes points in single precision whatever it is given, so marks
/// of any other map reach it rounded, by up to 0.00006 px, and then its steps end where single precision ends. Here the matrix has few
/// binary digits, and the marks lie on the lines where the third coordinate is 1, 2 or 4, so that the division is exact too.
/// </summary>
internal sealed record ExactCase(Homography Matrix, List<CalibrationMark> Marks)
{
    private const int Lines = 3;

    public static ExactCase At(Chance chance)
    {
        while (true)
        {
            var matrix = new Homography(
                Math.Round(chance.Between(-60, 60) * 16) / 16, Math.Round(chance.Between(-8, 8) * 4) / 4, Math.Round(chance.Between(0, 1920)),
                Math.Round(chance.Between(-60, 60) * 16) / 16, Math.Round(chance.Between(-8, 8) * 4) / 4, Math.Round(chance.Between(0, 1080)),
                Math.Round(chance.Between(-40, 40)) / 4096, chance.Index(2) == 0 ? 1.0 / 128 : 1.0 / 256, 1);
            var marks = Enumerable.Range(0, 2 * Lines).Select(i => Mark(matrix, i / 2, i % 2 == 0 ? 0 : 41.5)).ToList();
            if (matrix.Determinant > 0 && marks.TrueForAll(mark => ThrownPicture.FullHd.Contains(mark.Pixel))
                && marks.Max(mark => mark.Pixel.X) - marks.Min(mark => mark.Pixel.X) > 200 && marks.Max(mark => mark.Pixel.Y) - marks.Min(mark => mark.Pixel.Y) > 200)
            {
                var more = chance.Index(19);
                marks.AddRange(Enumerable.Range(0, more).Select(_ => Mark(matrix, chance.Index(Lines), Math.Round(chance.Between(0.5, 41) * 8) / 8)));
                return new ExactCase(matrix, [.. marks.DistinctBy(mark => (Math.Round(mark.Pixel.X / 4), Math.Round(mark.Pixel.Y / 4)))
                    .DistinctBy(mark => (Math.Round(mark.Lane.Across.Value), Math.Round(mark.Lane.Down.Value)))]);
            }
        }
    }

    private static CalibrationMark Mark(Homography matrix, int line, double across)
    {
        var down = ((1 << line) - 1 - (matrix.M31 * across)) / matrix.M32;
        var (x, y) = matrix.Apply(across, down);
        Assert.Equal(((float)across, (float)down, (float)x, (float)y), (across, down, x, y));
        return new CalibrationMark(new LanePoint(Inches.FromInches(across), Feet.FromFeet(down / 12)), new ProjectorPixel(x, y));
    }
}
