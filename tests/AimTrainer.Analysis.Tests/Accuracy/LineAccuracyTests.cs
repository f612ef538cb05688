using CsCheck;

namespace AimTrainer.Analysis.Tests;

public sealed class LineAccuracyTests
{
    [Fact]
    public void Result_HandExample_IsWhatAHandFinds()
    {
        // Source: err2d.hand: centroid (2, 0), SRE 2, BVE sqrt(2), MRE 2.3313708498984758, rms sqrt(6), axes sqrt(2) and sqrt(1/2); tolerance
        // 1e-9 (measured: no difference). Hancock, Butler & Fischman 1995, Journal of Motor Behavior 27(3):241-250.
        var line = Of((1, 0), (3, 0), (2, 2), (2, -2), (2, 0));
        Assert.Equal(5, line.Measured);
        Assert.Equal(new LineCentroid(2, 0), line.CentroidBoards);
        Assert.Equal(2.3313708498984758, line.MeanRadialErrorBoards.Value!.Value, 1e-9);
        Assert.Equal(2, line.CentroidErrorBoards.Value!.Value, 1e-9);
        Assert.Equal(1.4142135623730951, line.VariableErrorBoards.Value!.Value, 1e-9);
        Assert.Equal(2.449489742783178, line.TotalRadialErrorBoards!.Value, 1e-9);
        Assert.Equal(1.4142135623730951, line.MajorSpreadBoards!.Value, 1e-9);
        Assert.Equal(0.7071067811865476, line.MinorSpreadBoards!.Value, 1e-9);
        Assert.Equal(90, Math.Abs(line.MajorAxisDegrees!.Value), 1e-9);
        Assert.Equal(0, line.Correlation!.Value, 1e-12);
    }

    [Fact]
    public void Result_AnyShots_KeepsItsIdentities() =>
        Gen.Select(Gen.Int[-400, 400], Gen.Int[-400, 400]).Array[2, 60].Sample(shots =>
        {
            var points = shots.Select(shot => (X: shot.Item1 / 100.0, Y: shot.Item2 / 100.0)).ToArray();
            var line = Of(points);
            var (sre, bve, rms) = (line.CentroidErrorBoards.Value!.Value, line.VariableErrorBoards.Value!.Value, line.TotalRadialErrorBoards!.Value);
            Assert.Equal(rms * rms, (sre * sre) + (bve * bve), 1e-9);
            Assert.True(line.MeanRadialErrorBoards.Value <= rms + 1e-12);
            Assert.Equal(points.Average(point => Math.Sqrt((point.X * point.X) + (point.Y * point.Y))), line.MeanRadialErrorBoards.Value!.Value, 1e-9);
            var n = points.Length;
            var (major, minor) = (line.MajorSpreadBoards!.Value, line.MinorSpreadBoards!.Value);
            Assert.Equal(bve * bve * n / (n - 1), (major * major) + (minor * minor), 1e-9);
            Assert.True(line.CentroidErrorBoards.Low is null || (line.CentroidErrorBoards.Low <= sre + 1e-9 && sre <= line.CentroidErrorBoards.High + 1e-9));
        });

    [Fact]
    public void Result_PrincipalAxis_PointsWhereTheShotsScatter()
    {
        // By hand: misses (0,0), (1,2), (2,4): all on a line of slope 2, atan(2) = 63.43 degrees.
        var line = Of((0, 0), (1, 2), (2, 4));
        Assert.Equal(63.43494882292201, line.MajorAxisDegrees!.Value, 1e-9);
        Assert.Equal(0, line.MinorSpreadBoards!.Value, 1e-7);
        Assert.Equal(1, line.Correlation!.Value, 1e-12);
    }

    [Fact]
    public void Result_FewShots_SayFromWhen()
    {
        Assert.Equal("no shot measured at both targets; known from 1 on", Of().Why);
        var one = Of((1, 1));
        Assert.Equal(BoundedEstimate.Bare(Math.Sqrt(2), EstimateLimits.OneShot), one.CentroidErrorBoards);
        Assert.Null(one.VariableErrorBoards.Value);
        var two = Of((1, 1), (0, 1));
        Assert.Equal("2 measured at both targets; limits from 3 on", two.CentroidErrorBoards.Why);
        var alike = Of((1, 1), (1, 1), (1, 1));
        Assert.Equal((EstimateLimits.NoScatter, EstimateLimits.NoScatter), (alike.CentroidErrorBoards.Why, alike.VariableErrorBoards.Why));
    }

    [Fact]
    public void Result_ShotUnknownAtOneTarget_IsAShotAndNothingElse()
    {
        var accumulator = new LineAccuracyAccumulator();
        accumulator.Add(MadeShots.Shot(null, [(15, 10)]).At(1, (10, 15), (10, 42)));
        accumulator.Add(MadeShots.Shot(null, [(15, 20)]).At(2, (10, 15), (10, 42)));
        Assert.Equal((2, 0), (accumulator.Result.Shots, accumulator.Result.Measured));
        // The second is a miss whatever it did downlane; of the first nobody knows.
        Assert.Equal((0, 1), (accumulator.Result.HitRate.Hits, accumulator.Result.HitRate.Shots));
    }

    [Fact]
    public void Add_SingleTarget_Throws() =>
        Assert.Throws<ArgumentException>(() => new LineAccuracyAccumulator().Add(MadeShots.Shot(null, [(15, 10)]).At(1, (10, 15))));

    [Fact]
    public void Result_LimitsOfManySets_HoldTheTruth()
    {
        // Limits of the centroid (careful: never too narrow) and of the scatter (approximate): 1,000 sets of 15 shots, correlated as of one line.
        var chance = new Chance(5);
        var (centroid, scatter) = (0, 0);
        const int Sets = 1_000;
        for (var set = 0; set < Sets; set++)
        {
            var line = Of([.. Enumerable.Range(0, 15).Select(_ =>
            {
                var first = chance.Normal();
                return (0.6 + first, -0.4 + (1.5 * first) + (1.2 * chance.Normal()));
            })]);
            centroid += line.CentroidErrorBoards.Low <= Math.Sqrt(0.52) && Math.Sqrt(0.52) <= line.CentroidErrorBoards.High ? 1 : 0;
            // The variable error divides by n: its truth is the root of (n - 1) / n of the variances.
            var truth = Math.Sqrt((1 + 2.25 + 1.44) * 14 / 15);
            scatter += line.VariableErrorBoards.Low <= truth && truth <= line.VariableErrorBoards.High ? 1 : 0;
        }

        Assert.InRange(centroid, 0.95 * Sets, Sets);
        Assert.InRange(scatter, 0.93 * Sets, 0.975 * Sets);
    }

    private static LineAccuracy Of(params (double First, double Last)[] misses)
    {
        var accumulator = new LineAccuracyAccumulator();
        foreach (var (first, last) in misses)
        {
            accumulator.Add(MadeShots.Shot(null, [(15, 20 + first), (42, 15 + last)]).At(1, (20, 15), (15, 42)));
        }

        return accumulator.Result;
    }
}
