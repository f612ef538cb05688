using AimTrainer.Domain;

namespace AimTrainer.Calibration.Tests;

public sealed class DistortionTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Fit_SyntheticLenses_LensIsFoundAgain(int terms)
    {
        // Lenses that bend the corners of the picture by up to 44 px (4 %), many marks out to the edges of what is lit.
        var chance = new Chance(55 + (ulong)terms);
        for (var i = 0; i < 50; i++)
        {
            var lens = new LensDistortion(chance.Between(-0.03, 0.03), terms == 2 ? chance.Between(-0.01, 0.01) : 0);
            var picture = ThrownPicture.At(chance, lens);
            var marks = picture.Marks(chance, 8 + chance.Index(20));
            var outcome = MapFitter.Fit(marks, new FitSettings { Picture = ThrownPicture.FullHd, LaneWidth = ThrownPicture.LaneWidth, DistortionTerms = terms });
            var fit = outcome.Fit;
            Assert.True(fit is not null, string.Join('\n', outcome.Refusals));
            for (var k = 0; k < 50; k++)
            {
                var place = picture.Place(chance);
                var (ours, truth) = (fit.Map.PixelOf(place), picture.Map.PixelOf(place));
                Assert.InRange(Math.Sqrt(((ours.X - truth.X) * (ours.X - truth.X)) + ((ours.Y - truth.Y) * (ours.Y - truth.Y))), 0, 1e-6);
            }
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Distances_ManyNoisyFits_ErrorIsWhatTheySay(int terms)
    {
        // Errors at both edges of the lane, in units of what the fit itself says they should be: their mean square is 1.
        var chance = new Chance(70 + (ulong)terms);
        var (sum, count) = (0.0, 0);
        for (var i = 0; i < 150; i++)
        {
            var picture = ThrownPicture.At(chance);
            var marks = picture.Marks(chance, 16, noise: 0.05);
            var fit = MapFitter.Fit(marks, new FitSettings { Picture = ThrownPicture.FullHd, LaneWidth = ThrownPicture.LaneWidth, DistortionTerms = terms }).Fit;
            Assert.NotNull(fit);
            foreach (var at in fit.Distances)
            {
                foreach (var edge in (ReadOnlySpan<double>)[0, 41.5])
                {
                    var place = new LanePoint(Inches.FromInches(edge), at.Distance);
                    var (ours, truth) = (fit.Map.PixelOf(place), picture.Map.PixelOf(place));
                    var square = (((ours.X - truth.X) * (ours.X - truth.X)) + ((ours.Y - truth.Y) * (ours.Y - truth.Y))) / 2;
                    (sum, count) = (sum + (square / (0.05 * 0.05 * at.ErrorPerPixel * at.ErrorPerPixel)), count + 1);
                }
            }
        }

        Assert.InRange(sum / count, 0.85, 1.15);
    }

    [Fact]
    public void Fit_BentLensWithoutTerms_RefusedAndSaysWhichTermsWouldDo()
    {
        var chance = new Chance(58);
        var picture = ThrownPicture.Of(20, 0, 120, 180, 0, 2500, new LensDistortion(0.15, 0), new LaneStretch(Feet.FromFeet(5), Feet.FromFeet(60), default, default));
        var marks = picture.Marks(chance, 20, 0.1);
        FitOutcome With(int terms) =>
            MapFitter.Fit(marks, new FitSettings { Picture = ThrownPicture.FullHd, LaneWidth = ThrownPicture.LaneWidth, DistortionTerms = terms, Stretch = picture.Map.Stretch });

        var refusal = Assert.Single(With(0).Refusals);
        Assert.Equal(FitRefusalReason.ResidualOverLimit, refusal.Reason);
        Assert.Equal("Fit 1 distortion term(s)", refusal.ToDo);
        Assert.NotNull(With(1).Fit);
    }

    [Theory]
    [InlineData(1, 5)]
    [InlineData(2, 7)]
    public void Fit_TermsWithTooFewMarks_SaysHowManyAreNeeded(int terms, int marks)
    {
        var chance = new Chance(59);
        var outcome = MapFitter.Fit(
            ThrownPicture.At(chance).Marks(chance, marks), new FitSettings { Picture = ThrownPicture.FullHd, LaneWidth = ThrownPicture.LaneWidth, DistortionTerms = terms });

        var refusal = Assert.Single(outcome.Refusals);
        Assert.Equal(FitRefusalReason.TooFewMarks, refusal.Reason);
        Assert.Contains(FormattableString.Invariant($"needs at least {marks + 1}"), refusal.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Straightened_WithinReach_UndoesBent()
    {
        var chance = new Chance(60);
        for (var i = 0; i < 2000; i++)
        {
            var lens = new LensDistortion(chance.Between(-0.2, 0.2), chance.Between(-0.1, 0.1));
            var radius = chance.Unit() * Math.Min(lens.Reach, 1.5);
            var bent = lens.Bent(radius);

            // Near the end of the reach the slope is 0 and the root has half the digits; the bent place has them all.
            Assert.InRange(lens.Bent(lens.Straightened(bent)!.Value), bent - 1e-14, bent + 1e-14);
            Assert.InRange(lens.Straightened(bent)!.Value, radius - 1e-6, radius + 1e-6);
        }
    }

    [Theory]
    [InlineData(0, 0, double.PositiveInfinity)]
    [InlineData(0.1, 0.1, double.PositiveInfinity)]
    [InlineData(-1.0 / 3, 0, 1)]
    [InlineData(0, -0.2, 1)]
    [InlineData(-1, 0.45, 0.66666666666666663)]
    public void Reach_WhereTheSlopeIsNothing_IsFirstSuchPlace(double k1, double k2, double reach)
    {
        // The last: 1 - 3 s + 2.25 s^2 = (1 - 1.5 s)^2, s = 2/3 twice; a hair more of K2 and there is no such place.
        var found = new LensDistortion(k1, k2).Reach;
        Assert.Equal(k1 == -1 ? Math.Sqrt(reach) : reach, found, 1e-7);
    }

    [Theory]
    [InlineData(-0.14, true)]
    [InlineData(-0.15, false)]
    public void CoversPicture_AroundTheLimit_IsAsWorkedOutByHand(double k1, bool covers)
    {
        // r (1 + K r^2) is largest at r^2 = -1 / (3 K), where it is 2/3 r: 1 for K = -4/27 = -0.1481.
        Assert.Equal(covers, new LensDistortion(k1, 0).CoversPicture);
    }
}
