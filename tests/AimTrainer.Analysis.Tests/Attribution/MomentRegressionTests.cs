using CsCheck;

namespace AimTrainer.Analysis.Tests;

public sealed class MomentRegressionTests
{
    [Fact]
    public void Of_Norris_ReachesTheCertifiedValues()
    {
        // Source: NIST StRD Norris, certified values, itl.nist.gov/div898/strd/lls/data/Norris.shtml. Relative tolerance 1e-9; the comment at
        // each line gives the relative difference measured.
        double[] x =
        [
            0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777, 558.2, 0.4, 0.6, 775.5, 666.9, 338, 447.5, 11.6, 556, 228.1, 995.8, 887.6, 120.2,
            0.3, 0.3, 556.8, 339.1, 887.2, 999, 779, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
        ];
        double[] y =
        [
            0.1, 338.8, 118.1, 888, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998, 888.8, 119.6,
            0.3, 0.6, 557.6, 339.3, 888, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
        ];
        var moments = new CoMoments(2);
        for (var i = 0; i < x.Length; i++)
        {
            moments.Add(y[i], x[i]);
        }

        var fit = MomentRegression.Of(moments, 0, [1])!;
        Near(-0.262323073774029, fit.Intercept.Value!.Value); // 4.8e-13
        Near(1.00211681802045, fit.Slopes[0].Value!.Value); // 4.7e-15
        Near(0.232818234301152, fit.InterceptError); // 5.5e-11
        Near(0.000429796848199937, fit.SlopeErrors[0]); // 5.5e-11
        Near(0.884796396144373, fit.ResidualDeviation); // 5.5e-11
        Near(0.999993745883712, fit.ShareExplained!.Value); // 4.4e-16
        Assert.Equal(34, fit.Freedom);
    }

    [Fact]
    public void Of_Whiteside_AgreesWithR()
    {
        // Source: ancova.whiteside: R 4.2.2 lm(Gas ~ Insul + Temp) on MASS::whiteside (Venables & Ripley, MASS, ch. 6); tolerance 1e-8 (largest
        // difference measured: 8e-15).
        const string Before =
            "-0.8:7.2 -0.7:6.9 0.4:6.4 2.5:6.0 2.9:5.8 3.2:5.8 3.6:5.6 3.9:4.7 4.2:5.8 4.3:5.2 5.4:4.9 6.0:4.9 6.0:4.3 6.0:4.4 6.2:4.5 6.3:4.6 6.9:3.7 7.0:3.9 7.4:4.2 "
            + "7.5:4.0 7.5:3.9 7.6:3.5 8.0:4.0 8.5:3.6 9.1:3.1 10.2:2.6";
        const string After =
            "-0.7:4.8 0.8:4.6 1.0:4.7 1.4:4.0 1.5:4.2 1.6:4.2 2.3:4.1 2.5:4.0 2.5:3.5 3.1:3.2 3.9:3.9 4.0:3.5 4.0:3.7 4.2:3.5 4.3:3.5 4.6:3.7 4.7:3.5 4.9:3.4 4.9:3.7 "
            + "4.9:4.0 5.0:3.6 5.3:3.7 6.2:2.8 7.1:3.0 7.2:2.8 7.5:2.6 8.0:2.7 8.7:2.8 8.8:1.3 9.7:1.5";
        var moments = new CoMoments(3);
        foreach (var (text, after) in new[] { (Before, 0), (After, 1) })
        {
            foreach (var pair in text.Split(' '))
            {
                var numbers = pair.Split(':').Select(number => double.Parse(number, System.Globalization.CultureInfo.InvariantCulture)).ToArray();
                moments.Add(numbers[1], after, numbers[0]);
            }
        }

        var fit = MomentRegression.Of(moments, 0, [1, 2])!;
        Assert.Equal(-1.565204633102908, fit.Slopes[0].Value!.Value, 1e-8);
        Assert.Equal(0.097053378371677, fit.SlopeErrors[0], 1e-8);
        Assert.Equal(-1.759869058103969, fit.Slopes[0].Low!.Value, 1e-8);
        Assert.Equal(-1.370540208101847, fit.Slopes[0].High!.Value, 1e-8);
        Assert.Equal(-0.336696954627339, fit.Slopes[1].Value!.Value, 1e-8);
        Assert.Equal(0.0177631135363819, fit.SlopeErrors[1], 1e-8);
        Assert.Equal(6.551328707256263, fit.Intercept.Value!.Value, 1e-8);
        Assert.Equal(0.357411618794995, fit.ResidualDeviation, 1e-8);
        Assert.Equal(0.909745425237815, fit.ShareExplained!.Value, 1e-8);
        Assert.Equal(53, fit.Freedom);
    }

    [Fact]
    public void Of_PredictorsThatTellTheSame_IsNothing()
    {
        var moments = new CoMoments(3);
        for (var i = 0; i < 20; i++)
        {
            moments.Add(i % 7, i, (2 * i) + 1);
        }

        Assert.Null(MomentRegression.Of(moments, 0, [1, 2]));
        Assert.NotNull(MomentRegression.Of(moments, 0, [1]));
    }

    [Fact]
    public void Of_PredictorThatDoesNotVaryOrTooFewRows_IsNothing()
    {
        var moments = new CoMoments(2);
        moments.Add(1, 5);
        moments.Add(2, 6);
        moments.Add(4, 7);
        Assert.Null(MomentRegression.Of(moments, 0, [1]));
        var still = new CoMoments(2);
        Enumerable.Range(0, 9).ToList().ForEach(i => still.Add(i, 5));
        Assert.Null(MomentRegression.Of(still, 0, [1]));
    }

    [Fact]
    public void CoMoments_AnyRows_AgreeWithTwoPasses() =>
        Gen.Select(Gen.Double[-500, 500], Gen.Double[-1, 1]).Array[2, 100].Sample(rows =>
        {
            var moments = new CoMoments(2);
            foreach (var (left, right) in rows)
            {
                moments.Add(left, right);
            }

            var (x, y) = (rows.Average(row => row.Item1), rows.Average(row => row.Item2));
            Assert.Equal(x, moments.Mean(0), 1e-9);
            Assert.Equal(rows.Sum(row => (row.Item1 - x) * (row.Item2 - y)) / (rows.Length - 1), moments.Covariance(0, 1), 1e-8);
            Assert.Equal(moments.Covariance(1, 0), moments.Covariance(0, 1));
            Assert.Equal(
                moments.Covariance(0, 0) + (4 * moments.Covariance(0, 1)) + (4 * moments.Covariance(1, 1)), moments.VarianceOf(1, 2), 1e-6);
        });

    [Fact]
    public void CoMoments_WrongNumberOfValues_Throws() => Assert.Throws<ArgumentException>(() => new CoMoments(2).Add(1.0));

    private static void Near(double certified, double found) => Assert.Equal(1, found / certified, 1e-9);
}
