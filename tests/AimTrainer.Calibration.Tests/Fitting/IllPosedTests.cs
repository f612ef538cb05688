using AimTrainer.Domain;

namespace AimTrainer.Calibration.Tests;

/// <summary>Marks that give no map: 25 random cases of each of eight sorts, each refused for its own reason and naming its own marks.</summary>
public sealed class IllPosedTests
{
    private const int OfEach = 25;

    private readonly Chance _chance = new(77);

    [Fact]
    public void Fit_FewerThanFour_RefusedAsTooFew() => Each((picture, _) =>
    {
        var marks = picture.Marks(_chance, 4);
        return (marks.GetRange(0, _chance.Index(4)), FitRefusalReason.TooFewMarks, []);
    });

    [Fact]
    public void Fit_ThreeOfFourInALine_RefusedAsInALine() => Each((picture, _) =>
    {
        // The fourth mark anywhere; three on a line across, down or aslant.
        var marks = picture.Marks(_chance, 4);
        var share = _chance.Between(0.3, 0.7);
        var between = new LanePoint(
            Inches.FromInches(Mixed(marks[0].Lane.Across.Value, marks[3].Lane.Across.Value, share)),
            Feet.FromFeet(Mixed(marks[0].Lane.Down.Value, marks[3].Lane.Down.Value, share)));
        marks[2] = new CalibrationMark(between, picture.Map.PixelOf(between));
        return (marks, FitRefusalReason.InALine, [0, 2, 3]);
    });

    [Fact]
    public void Fit_AllButOneInALine_RefusedAsInALine() => Each((picture, _) =>
    {
        // One row of dots and one arrow: however many marks, no four of them settle a map.
        var marks = picture.Marks(_chance, 4);
        var (right, left) = (marks[0].Lane, marks[3].Lane);
        var row = Enumerable.Range(0, 3 + _chance.Index(8)).Select(i => new LanePoint(
            Inches.FromInches(Mixed(right.Across.Value, left.Across.Value, 0.1 + (0.07 * i))), Feet.FromFeet(Mixed(right.Down.Value, left.Down.Value, 0.1 + (0.07 * i)))));
        List<CalibrationMark> all = [.. row.Select(place => new CalibrationMark(place, picture.Map.PixelOf(place))), marks[1]];
        return (all, FitRefusalReason.InALine, [.. Enumerable.Range(0, all.Count - 1)]);
    });

    [Fact]
    public void Fit_TwoAtOnePlace_RefusedAsDuplicates() => Each((picture, i) =>
    {
        var marks = picture.Marks(_chance, 6);
        marks[5] = i % 2 == 0 ? marks[5] with { Lane = marks[2].Lane } : marks[5] with { Pixel = marks[2].Pixel };
        return (marks, FitRefusalReason.DuplicateMarks, [2, 5]);
    });

    [Fact]
    public void Fit_TwoWithEachOthersPixels_RefusedAsSwapped() => Each((picture, i) =>
    {
        // With four marks two neighbours of the quadrangle; two across from one another are a mirrored picture as well.
        var count = i % 2 == 0 ? 4 : 6 + _chance.Index(10);
        var marks = picture.Marks(_chance, count);
        var (a, b) = count == 4 ? (0, 1) : (_chance.Index(4), 4 + _chance.Index(count - 4));
        if (Apart(marks[a].Pixel, marks[b].Pixel) < 40)
        {
            return null;
        }

        (marks[a], marks[b]) = (marks[a] with { Pixel = marks[b].Pixel }, marks[b] with { Pixel = marks[a].Pixel });
        return (marks, FitRefusalReason.SwappedMarks, [Math.Min(a, b), Math.Max(a, b)]);
    });

    [Fact]
    public void Fit_PictureInAMirror_RefusedAsMirrored() => Each((picture, i) =>
    {
        var marks = picture.Marks(_chance, 4 + _chance.Index(10), noise: 0.3);
        return (
            marks.ConvertAll(mark => mark with { Pixel = i % 2 == 0 ? mark.Pixel with { X = 1920 - mark.Pixel.X } : mark.Pixel with { Y = 1080 - mark.Pixel.Y } }),
            FitRefusalReason.Mirrored, []);
    });

    [Fact]
    public void Fit_PixelBesideThePicture_RefusedAsOffPicture() => Each((picture, i) =>
    {
        var marks = picture.Marks(_chance, 5);
        var pixel = (i % 5) switch
        {
            0 => new ProjectorPixel(-0.5, 300),
            1 => new ProjectorPixel(1920.5, 300),
            2 => new ProjectorPixel(900, -3),
            3 => new ProjectorPixel(900, 1081),
            _ => new ProjectorPixel(double.NaN, 5),
        };
        marks[3] = marks[3] with { Pixel = pixel };
        return (marks, FitRefusalReason.OffPicture, [3]);
    });

    [Fact]
    public void Fit_OneMarkFarOff_RefusedForItsResidual() => Each((picture, _) =>
    {
        var marks = picture.Marks(_chance, 8 + _chance.Index(8), noise: 0.3);
        var wrong = _chance.Index(marks.Count);
        var (off, turn) = (_chance.Between(40, 120), _chance.Between(0, 2 * Math.PI));
        var pixel = new ProjectorPixel(marks[wrong].Pixel.X + (off * Math.Cos(turn)), marks[wrong].Pixel.Y + (off * Math.Sin(turn)));
        if (!picture.Map.Picture.Contains(pixel) || marks.Exists(mark => Apart(mark.Pixel, pixel) < 2 * off && mark != marks[wrong]))
        {
            return null;
        }

        marks[wrong] = marks[wrong] with { Pixel = pixel };
        return (marks, FitRefusalReason.ResidualOverLimit, [wrong]);
    });

    [Fact]
    public void Fit_StretchBehindTheProjector_RefusedAsFolding()
    {
        // A projector 20 ft down the lane that looks away from the bowler lights nothing behind itself.
        var picture = ThrownPicture.Of(
            20, 240, 120, 500, 0, 3000, default, new LaneStretch(Feet.FromFeet(35), Feet.FromFeet(60), Feet.FromFeet(0), Feet.FromFeet(0)));
        var marks = picture.Marks(_chance, 8);
        var whole = Fit(marks, new LaneStretch(Feet.FromFeet(0), Feet.FromFeet(60), Feet.FromFeet(0), Feet.FromFeet(0)));
        var part = Fit(marks, new LaneStretch(Feet.FromFeet(30), Feet.FromFeet(60), Feet.FromFeet(0), Feet.FromFeet(0)));

        var refusal = Assert.Single(whole.Refusals);
        Assert.Equal(FitRefusalReason.FoldsTheLane, refusal.Reason);

        // The plane through the projector square to its axis meets the lane 120 in x 120 / 260 before the spot below it.
        Assert.Contains("at 15.4 ft", refusal.Found, StringComparison.Ordinal);
        Assert.NotNull(part.Fit);
    }

    [Fact]
    public void Fit_FourMarksOneInsideOfTheOthersInThePictureOnly_RefusedAsFolding()
    {
        // On the lane a rectangle, in the picture a triangle with the fourth mark inside: no exchange of two marks can mend that.
        List<CalibrationMark> marks =
        [
            Mark(0, 0, 100, 1000), Mark(41.5, 0, 1800, 1000), Mark(41.5, 60, 950, 100), Mark(0, 60, 950, 700),
        ];
        var refusal = Assert.Single(Fit(marks, null).Refusals);
        Assert.Equal(FitRefusalReason.FoldsTheLane, refusal.Reason);
    }

    [Fact]
    public void Fit_TwoRowsOfThree_IsWellPosed()
    {
        // Three in a line do no harm where four others are free of it.
        var picture = ThrownPicture.Of(20, -60, 120, 120, 0, 2500, default, LaneStretch.Whole);
        List<LanePoint> places = [Place(2, 7.5), Place(20, 7.5), Place(39, 7.5), Place(5, 14), Place(20, 14), Place(35, 14)];
        var marks = places.ConvertAll(place => new CalibrationMark(place, picture.Map.PixelOf(place)));
        Assert.All(marks, mark => Assert.True(picture.Map.Picture.Contains(mark.Pixel), $"{mark}"));
        Assert.NotNull(Fit(marks, null).Fit);
    }

    [Fact]
    public void Fit_SeveralThingsWrong_AllAreSaid()
    {
        List<CalibrationMark> marks = [Mark(0, 0, -5, 1000), Mark(41.5, 0, 1800, 1000), Mark(41.5, 0, 950, 100)];
        Assert.Equal(
            [FitRefusalReason.TooFewMarks, FitRefusalReason.OffPicture, FitRefusalReason.DuplicateMarks],
            Fit(marks, null).Refusals.AsEnumerable().Select(refusal => refusal.Reason));
    }

    [Fact]
    public void Fit_EveryRefusal_SaysWhatToDo()
    {
        List<CalibrationMark> marks = [Mark(0, 0, 100, 1000) with { Name = "foul line, right edge" }, Mark(41.5, 0, 1800, 2000)];
        var refusals = Fit(marks, null).Refusals;
        Assert.All(refusals, refusal => Assert.NotEmpty(refusal.ToDo));
        Assert.Equal("mark 2 (board 39.5 from the right at 0 ft) is at pixel (1800, 2000), outside of the picture of 1920 x 1080", refusals[1].Found);
    }

    private void Each(Func<ThrownPicture, int, (List<CalibrationMark> Marks, FitRefusalReason Reason, int[] Named)?> make)
    {
        for (var i = 0; i < OfEach;)
        {
            if (make(ThrownPicture.At(_chance), i) is not { } ill)
            {
                continue;
            }

            var outcome = Fit(ill.Marks, null);
            Assert.Null(outcome.Fit);
            var refusal = Assert.Single(outcome.Refusals);
            Assert.True(ill.Reason == refusal.Reason, $"case {i}: {refusal}");
            Assert.True(ill.Named.SequenceEqual(refusal.Marks), $"case {i}: {refusal}, but it is {string.Join(", ", ill.Named)}");
            i++;
        }
    }

    private static FitOutcome Fit(List<CalibrationMark> marks, LaneStretch? stretch) => MapFitter.Fit(
        marks, new FitSettings { Picture = ThrownPicture.FullHd, LaneWidth = ThrownPicture.LaneWidth, Stretch = stretch });

    private static CalibrationMark Mark(double across, double feet, double x, double y) =>
        new(new LanePoint(Inches.FromInches(across), Feet.FromFeet(feet)), new ProjectorPixel(x, y));

    private static LanePoint Place(double across, double feet) => new(Inches.FromInches(across), Feet.FromFeet(feet));

    private static double Mixed(double from, double to, double share) => from + ((to - from) * share);

    private static double Apart(ProjectorPixel a, ProjectorPixel b) => Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)));
}
