using AimTrainer.Domain;
using OpenCvSharp;

namespace AimTrainer.Calibration.Tests;

/// <summary>
/// Our fit against an independent one: OpenCV's findHomography with method 0, "all the points".
/// </summary>
/// <remarks>
/// Source of the method of both: Hartley and Zisserman, Multiple View Geometry in Computer Vision, algorithm 4.2 (normalised DLT), then
/// the refinement of algorithm 4.3 (from memory). Source of the reference: OpenCV 4.13, module calib3d, through OpenCvSharp.
/// </remarks>
public sealed class OpenCvTests
{
    private const int Cases = 500;

    [Fact]
    public void Fit_ManyMarksWithoutNoise_LightsWhereOpenCvDoes()
    {
        var chance = new Chance(31);
        var worst = 0.0;
        for (var i = 0; i < Cases; i++)
        {
            var exact = ExactCase.At(chance);
            var fit = Fitted(exact.Marks);
            var theirs = Theirs(exact.Marks);
            var (near, far) = (exact.Marks.Min(mark => mark.Lane.Down.Value), exact.Marks.Max(mark => mark.Lane.Down.Value));
            for (var k = 0; k < 20; k++)
            {
                worst = Math.Max(worst, Apart(fit, theirs, new LanePoint(Inches.FromInches(chance.Between(0, 41.5)), Feet.FromFeet(chance.Between(near, far)))));
            }
        }

        Assert.InRange(worst, 0, 1e-6);
    }

    [Fact]
    public void Fit_FourMarksOfRandomProjectors_LightsWhereOpenCvDoes()
    {
        var chance = new Chance(33);
        var worst = 0.0;
        for (var i = 0; i < Cases; i++)
        {
            var picture = ThrownPicture.At(chance);
            var marks = picture.Marks(chance, 4).ConvertAll(InSingles);
            var fit = Fitted(marks);
            var theirs = Theirs(marks);
            for (var k = 0; k < 20; k++)
            {
                worst = Math.Max(worst, Apart(fit, theirs, picture.Place(chance)));
            }
        }

        Assert.InRange(worst, 0, 1e-6);
    }

    [Fact]
    public void Fit_RandomProjectorsWithoutNoise_FindsTheProjector()
    {
        var chance = new Chance(34);
        var worst = 0.0;
        for (var i = 0; i < Cases; i++)
        {
            var picture = ThrownPicture.At(chance);
            var fit = Fitted(picture.Marks(chance, 4 + chance.Index(21)));
            for (var k = 0; k < 20; k++)
            {
                var place = picture.Place(chance);
                worst = Math.Max(worst, Distance(fit.Map.PixelOf(place), picture.Map.PixelOf(place)));
            }
        }

        Assert.InRange(worst, 0, 1e-9);
    }

    [Fact]
    public void Fit_RandomProjectorsWithHalfAPixelOfNoise_RmsNoWorseThanOpenCv()
    {
        var chance = new Chance(32);
        for (var i = 0; i < Cases; i++)
        {
            var picture = ThrownPicture.At(chance);
            var marks = picture.Marks(chance, 5 + chance.Index(20), noise: 0.5);
            var theirs = Theirs(marks);
            var theirRms = Math.Sqrt(marks.Average(mark =>
            {
                var (x, y) = theirs.Apply(mark.Lane.Across.Value, mark.Lane.Down.Value * 12);
                return ((x - mark.Pixel.X) * (x - mark.Pixel.X)) + ((y - mark.Pixel.Y) * (y - mark.Pixel.Y));
            }));

            // Both end where the sum of squares is least; the last digits are not ours to judge.
            Assert.InRange(Fitted(marks).Quality.RmsPixels, 0, theirRms + 1e-9);
        }
    }

    private static MapFit Fitted(List<CalibrationMark> marks)
    {
        var outcome = MapFitter.Fit(marks, new FitSettings { Picture = ThrownPicture.FullHd, LaneWidth = ThrownPicture.LaneWidth });
        Assert.True(outcome.Fit is not null, string.Join('\n', outcome.Refusals));
        return outcome.Fit;
    }

    private static Homography Theirs(List<CalibrationMark> marks)
    {
        using var h = Cv2.FindHomography(
            marks.Select(mark => new Point2d(mark.Lane.Across.Value, mark.Lane.Down.Value * 12)),
            marks.Select(mark => new Point2d(mark.Pixel.X, mark.Pixel.Y)), HomographyMethods.None);
        double At(int row, int column) => h.At<double>(row, column);
        return new Homography(At(0, 0), At(0, 1), At(0, 2), At(1, 0), At(1, 1), At(1, 2), At(2, 0), At(2, 1), At(2, 2));
    }

    /// <summary>OpenCV takes points in single precision, whatever it is given: both get the same marks.</summary>
    private static CalibrationMark InSingles(CalibrationMark mark) => mark with
    {
        Lane = new LanePoint(Inches.FromInches((float)mark.Lane.Across.Value), Feet.FromFeet((float)(mark.Lane.Down.Value * 12) / 12.0)),
        Pixel = new ProjectorPixel((float)mark.Pixel.X, (float)mark.Pixel.Y),
    };

    private static double Apart(MapFit ours, Homography theirs, LanePoint place)
    {
        var (x, y) = theirs.Apply(place.Across.Value, place.Down.Value * 12);
        return Distance(ours.Map.PixelOf(place), new ProjectorPixel(x, y));
    }

    private static double Distance(ProjectorPixel a, ProjectorPixel b) => Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)));
}
