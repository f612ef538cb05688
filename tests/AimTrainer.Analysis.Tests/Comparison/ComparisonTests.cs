using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

public sealed class ComparisonTests
{
    private static readonly ComparisonSettings _settings = new() { Reference = "red", Lane = LaneProfileReader.Default };

    [Fact]
    public void Compare_BallFurtherInside_SaysSoAndBeyondTheMargin()
    {
        var report = BallComparer.Compare(Throws(10), _settings);

        var line = Assert.Single(report.Lines);
        Assert.Null(report.Problem);
        var entry = line.Measures.Single(found => found.Measure.Name == "entryBoard");
        Assert.Equal(ComparisonVerdict.DifferentBeyondMargin, entry.Verdict);
        Assert.InRange(2, entry.Best.Difference.Low!.Value, entry.Best.Difference.High!.Value);
        Assert.Empty(report.Excluded);
        Assert.Matches(@"^blue is [0-9.]+ boards \([0-9.]+ to [0-9.]+\) further inside at the pins than red\.$", entry.Sentence);
        Assert.StartsWith("blue is ", line.Sentence, StringComparison.Ordinal);
        Assert.Equal(["laydown", "speed"], line.AdjustedFor);
        Assert.Contains("revs not measured", line.NotAdjustedFor);
        Assert.Equal(10, entry.Paired!.Pairs);
        Assert.Contains("speed loss: a shot carries the speed of one place only", line.NotCompared);
    }

    [Fact]
    public void Compare_OtherWayRound_ChangesEverySignAndNothingElse()
    {
        var there = BallComparer.Compare(Throws(10, wear: 0), _settings).Lines[0].Measures;
        var back = BallComparer.Compare(Throws(10, wear: 0), _settings with { Reference = "blue" }).Lines[0].Measures;

        foreach (var (a, b) in there.Zip(back))
        {
            Assert.Equal(a.Unadjusted.Difference.Value!.Value, -b.Unadjusted.Difference.Value!.Value, 1e-9);
            Assert.Equal(a.HodgesLehmann.Low!.Value, -b.HodgesLehmann.High!.Value, 1e-9);
            Assert.Equal(a.Unadjusted.P!.Value, b.Unadjusted.P!.Value, 1e-12);
            Assert.Equal(a.Spread!.P, b.Spread!.P, 1e-9);
        }
    }

    [Fact]
    public void Compare_LaneThatDriftsInBlocks_DriftIsTakenOutByTheReferenceBall()
    {
        // All of red, then all of blue, on a lane on which every throw ends 0.2 boards further inside: 3 boards of the plain difference of
        // 5 are the lane's, over the 15 throws from the middle of the one to the middle of the other.
        var report = BallComparer.Compare(Throws(15, wear: 0.2, blocks: true), _settings);
        var entry = report.Lines[0].Measures.Single(found => found.Measure.Name == "entryBoard");

        Assert.Equal(5, entry.Unadjusted.Difference.Value!.Value, 0.2);
        Assert.InRange(2, entry.Adjusted!.Difference.Difference.Low!.Value, entry.Adjusted.Difference.Difference.High!.Value);
        Assert.Equal(0.2, entry.Adjusted.Drift!.Value!.Value, 0.05);
        Assert.Equal(0.2, entry.Adjusted.BallDrift!.Value!.Value, 0.05);
        Assert.Null(entry.Paired);
    }

    [Fact]
    public void Compare_FasterBall_SlopeIsShownAndTheSpeedTakenOut()
    {
        var report = BallComparer.Compare(Throws(15, faster: 1), _settings);
        var entry = report.Lines[0].Measures.Single(found => found.Measure.Name == "entryBoard");

        // Each mph is 2 boards less.
        var slope = entry.Adjusted!.Slopes.Single(found => found.Name == "speedMph");
        Assert.Equal(-2, slope.Slope.Value!.Value, 0.3);
        Assert.Equal(1, slope.BallMean - slope.ReferenceMean, 0.15);
        Assert.Equal(0, entry.Unadjusted.Difference.Value!.Value, 0.3);
        Assert.InRange(2, entry.Best.Difference.Low!.Value, entry.Best.Difference.High!.Value);
    }

    [Fact]
    public void Compare_SpeedAtThePins_IsTheBallsDoingAndNotAdjustedFor()
    {
        var throws = Throws(10).Select(one => one with { Shot = one.Shot with { Speed = one.Shot.Speed!.Value with { Place = SpeedPlace.Pins } } });
        var line = BallComparer.Compare(throws, _settings).Lines[0];
        Assert.Contains("speed not measured", line.NotAdjustedFor);
        Assert.Contains(line.Measures, found => found.Measure is { Name: "speedAtPins", Claimed: true });
    }

    [Fact]
    public void Compare_LaunchAngleFromACrossing_IsNotAdjustedFor()
    {
        var throws = Throws(10).Select(one => one with { Shot = one.Shot with { Crossings = [new Crossing(Feet.FromFeet(15), Board.FromBoards(15))] } });
        Assert.Contains("launch angle only worked out from a crossing, in which the ball's own hook is", BallComparer.Compare(throws, _settings).Lines[0].NotAdjustedFor);
    }

    [Fact]
    public void Compare_TwoLines_EachByItselfAndOverAll()
    {
        var throws = Throws(10).Select(one => one with { Line = "outside" }).Concat(Throws(10, from: 20).Select(one => one with { Line = "inside" }));
        var report = BallComparer.Compare(throws, _settings);

        Assert.Equal(["outside", "inside"], report.Lines.Select(line => line.Line));
        var over = report.Overall.Single(found => found.Measure.Name == "entryBoard");
        var each = report.Lines.Select(line => line.Measures.Single(found => found.Measure.Name == "entryBoard").Best).ToList();
        Assert.Equal(each.Average(found => found.Difference.Value!.Value), over.Difference.Difference.Value!.Value, 1e-12);
        Assert.Equal(Math.Sqrt(each.Sum(found => found.StandardError!.Value * found.StandardError.Value)) / 2, over.Difference.StandardError!.Value, 1e-12);
        Assert.Equal((2, ComparisonVerdict.DifferentBeyondMargin), (over.Lines, over.Verdict));
        Assert.Contains("over 2 lines", over.Sentence, StringComparison.Ordinal);
        Assert.Contains("on inside", report.Lines[1].Measures.Single(found => found.Measure.Name == "entryBoard").Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Compare_EqualBalls_AreShownToBeEqualOrLeftOpen()
    {
        var entry = BallComparer.Compare(Throws(30, apart: 0), _settings).Lines[0].Measures.Single(found => found.Measure.Name == "entryBoard");
        Assert.Equal(ComparisonVerdict.Equal, entry.Verdict);
        Assert.StartsWith("Board at the pins: equal within half a board (90 % limits ", entry.Sentence, StringComparison.Ordinal);
        Assert.Null(entry.MoreThrows);

        var open = BallComparer.Compare(Throws(6, apart: 0), _settings with { MarginBoards = 0.1 }).Lines[0];
        var found = open.Measures.Single(one => one.Measure.Name == "entryBoard");
        Assert.Equal(ComparisonVerdict.Open, found.Verdict);
        Assert.Contains("no difference can be claimed yet, and none larger than 0.1 boards ruled out", found.Sentence, StringComparison.Ordinal);
        Assert.True(found.MoreThrows > 0 || found.MoreThrowsWhy is not null);
        Assert.Contains("no difference larger than 0.1 boards can be claimed or ruled out yet: board at the pins", open.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void MoreThrows_WiderMargin_AreFewer()
    {
        var difference = MeanDifference.From(0.1, 0.5, 18);
        var narrow = ThrowsNeeded.Of(difference, 0.5, 10);
        var wide = ThrowsNeeded.Of(difference, 1, 10);

        // By hand: 0.4 = (t.95 + t.80) · 0.5 · √(10/n), about (1.66 + 0.85) · 0.5 · √(10/n): n about 98.
        Assert.InRange(narrow!.Value, 84, 92);
        Assert.True(wide < narrow);
        Assert.Null(ThrowsNeeded.Of(difference, 0.11, 10));
    }

    [Fact]
    public void Compare_Misread_IsFlaggedForItsMeasureOnly()
    {
        var throws = Throws(10).ToList();
        throws[7] = throws[7] with { Shot = throws[7].Shot with { Entry = Board.FromBoards(33) } };
        var report = BallComparer.Compare(throws, _settings);

        var one = Assert.Single(report.Excluded);
        Assert.Equal((8, "entryBoard", "entryBoard 33 stands out from the other throws with this ball: misread or real?"), (one.Number, one.Measure, one.Reason));
        Assert.Equal(9, report.Lines[0].Measures.Single(found => found.Measure.Name == "entryBoard").BallThrows);
        Assert.Equal(10, report.Lines[0].Measures.Single(found => found.Measure.Name == "breakpointBoard").BallThrows);
    }

    [Fact]
    public void Compare_RealThrowThatTurnsMuchEarlier_StaysInAndIsSaid()
    {
        // Where a flat path turns may lie many feet off in a real throw; left out, the mean would be cut on one side.
        var throws = Throws(10).ToList();
        throws[7] = throws[7] with { Shot = throws[7].Shot with { Breakpoint = new Breakpoint(throws[7].Shot.Breakpoint!.Value.Board, Feet.FromFeet(29)) } };
        var report = BallComparer.Compare(throws, _settings);

        Assert.Empty(report.Excluded);
        Assert.Equal(10, report.Lines[0].Measures.Single(found => found.Measure.Name == "breakpointFeet").BallThrows);
        Assert.Contains(
            "throw 8: distance of the breakpoint 29 ft stands out from the other throws with blue and stays in; void or correct it if it was misread", report.Notices);
        Assert.DoesNotContain(BallComparer.Compare(Throws(10), _settings).Notices, notice => notice.Contains("stands out", StringComparison.Ordinal));
    }

    [Fact]
    public void Compare_MisreadBreakpoint_TakesWhatWasReadOffItWithIt()
    {
        var throws = Throws(10).ToList();
        throws[7] = throws[7] with { Shot = throws[7].Shot with { Breakpoint = new Breakpoint(Board.FromBoards(17), throws[7].Shot.Breakpoint!.Value.Distance) } };
        var report = BallComparer.Compare(throws, _settings);

        Assert.Equal(["breakpointBoard", "breakpointFeet"], report.Excluded.Select(one => one.Measure));
        Assert.All(report.Excluded, one => Assert.Equal(8, one.Number));
        Assert.Equal("read off breakpointBoard, which stands out: misread or real?", report.Excluded[1].Reason);
        Assert.Equal(10, report.Lines[0].Measures.Single(found => found.Measure.Name == "entryBoard").BallThrows);
    }

    [Fact]
    public void Compare_SmallDeviationOfVeryEvenThrows_IsNoMisreading()
    {
        // 1.5 boards stand far out of a scatter of 0.1; less than 2 boards are never called misread.
        var throws = Throws(12).ToList();
        throws[7] = throws[7] with { Shot = throws[7].Shot with { Entry = Board.FromBoards(throws[7].Shot.Entry!.Value.Boards + 1.5) } };
        Assert.Empty(BallComparer.Compare(throws, _settings).Excluded);
    }

    [Fact]
    public void Compare_OneBallOnly_StillSaysWhereItFits()
    {
        var report = BallComparer.Compare(Throws(6).Where(one => one.Ball == "red"), _settings);
        Assert.Equal("one ball only, red; a comparison needs throws of two balls", report.Problem);
        Assert.Empty(report.Lines);
        var place = Assert.Single(report.Balls);
        Assert.Equal(("red", 6), (place.Ball, place.Throws));
        Assert.Matches(
            @"^On the line, the one that turns first before the others: red at 40\.?[0-9]* \([0-9.]+ to [0-9.]+\) ft on board [0-9.]+ \([0-9.]+ to [0-9.]+\)\.$",
            BagWords.Of(report.Balls)[0]);
        Assert.Equal("On the line, how sharply a ball turns is not known: red (not measured).", BagWords.Of(report.Balls)[1]);
    }

    [Fact]
    public void BagWords_LimitsThatOverlap_LeaveTheOrderOpenAndTheUnmeasuredUnknown()
    {
        var known = BoundedEstimate.Between(40, 39, 41);
        var unknown = BoundedEstimate.Unknown("not measured");
        BallOnLine Ball(string name, BoundedEstimate feet) => new(name, "the line", 9, feet, unknown, unknown, unknown, unknown);

        var words = BagWords.Of([Ball("Late", BoundedEstimate.Between(45, 44, 46)), Ball("A", known), Ball("B", BoundedEstimate.Between(40.5, 39.5, 41.5)), Ball("Dark", unknown)])[0];

        Assert.Equal(
            "On the line, the one that turns first before the others: A at 40 (39 to 41) ft, board not measured; B at 40.5 (39.5 to 41.5) ft, board not measured; "
            + "Late at 45 (44 to 46) ft, board not measured. By this alone the order of A and B is open. Not known: Dark (not measured).",
            words);
    }

    [Fact]
    public void Compare_SlipGutterAndMissingSpeed_AreLeftOutWithTheReason()
    {
        var throws = Throws(12).ToList();
        throws[3] = throws[3] with { Shot = throws[3].Shot with { Laydown = Board.FromBoards(30) } };
        throws[6] = throws[6] with { Shot = throws[6].Shot with { Entry = Board.FromMeasurement(-4) } };
        throws[9] = throws[9] with { Shot = throws[9].Shot with { Speed = null } };
        var reasons = BallComparer.Compare(throws, _settings).Excluded.ToDictionary(one => one.Number, one => one.Reason);

        Assert.StartsWith("gross miss: laydown 30, usual with this ball ", reasons[4], StringComparison.Ordinal);
        Assert.Equal("in the gutter at the pins", reasons[7]);
        Assert.Equal("speed not measured, which most others have", reasons[10]);
    }

    [Fact]
    public void Compare_Limits_LeaveOutOtherThrowsAndTheUnmeasured()
    {
        var throws = Throws(12).ToList();
        throws[5] = throws[5] with { Shot = throws[5].Shot with { Speed = new BallSpeed(MilesPerHour.FromMeasurement(17.55), SpeedPlace.Release) } };
        throws[6] = throws[6] with { Shot = throws[6].Shot with { Speed = null } };
        var limits = new ComparableLimits
        {
            SpeedWithin = MilesPerHour.FromMilesPerHour(0.5),
            Given = new Baseline { Speed = new BallSpeed(MilesPerHour.FromMilesPerHour(17), SpeedPlace.Release) },
        };
        var reasons = BallComparer.Compare(throws, _settings with { Limits = limits }).Excluded.ToDictionary(one => one.Number, one => one.Reason);

        Assert.Equal("not the same throw: speed 17.55, expected 17 within 0.5", reasons[6]);
        Assert.Equal("speed not measured, so it cannot be told whether it was the same throw", reasons[7]);
    }

    [Fact]
    public void Compare_Line_GivesWhatLimitsAreHeldAgainst()
    {
        // The line from board 15 at 15 ft to 10 at 40 ft starts on board 18.
        var settings = _settings with
        {
            Targets = [new Crossing(Feet.FromFeet(15), Board.FromBoards(15)), new Crossing(Feet.FromFeet(40), Board.FromBoards(10))],
            Limits = new ComparableLimits { LaydownWithin = BoardOffset.FromBoards(0.5) },
        };
        var report = BallComparer.Compare(Throws(12), settings);
        Assert.Contains("within 0.5", report.Problem is null ? "" : report.Excluded[0].Reason, StringComparison.Ordinal);
        Assert.Contains("expected 18", report.Excluded[0].Reason, StringComparison.Ordinal);
        Assert.StartsWith("nothing can be compared: 24 throws are left out", report.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Compare_FewThrows_NothingIsClaimed()
    {
        foreach (var each in Enumerable.Range(1, 4))
        {
            var line = Assert.Single(BallComparer.Compare(Throws(each), _settings).Lines);
            Assert.All(line.Measures, found => Assert.True(found.Verdict is ComparisonVerdict.TooFew or ComparisonVerdict.NotJudged));
            Assert.Equal("blue against red on the line: nothing can be said yet.", line.Sentence);
            Assert.Contains($"not known; {each} throws of blue and {each} of red have it, needed are 5 of each", line.Measures[^1].Sentence, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Compare_AllReadingsTheSame_IsNotKnownAndSaysWhy()
    {
        var throws = Throws(8).Select(one => one with { Shot = one.Shot with { Entry = Board.FromBoards(20), Laydown = null, Speed = null } });
        var entry = BallComparer.Compare(throws, _settings).Lines[0].Measures.Single(found => found.Measure.Name == "entryBoard");
        Assert.Equal(ComparisonVerdict.TooFew, entry.Verdict);
        Assert.Equal("Board at the pins: not known; all readings are the same, so they are too coarse or too few for limits.", entry.Sentence);
    }

    [Fact]
    public void Compare_NamesThatDifferInCapitals_AreOneBallAndSaid()
    {
        var throws = Throws(8).Select(one => one with { Ball = one.Number % 4 == 1 ? " RED" : one.Ball });
        var report = BallComparer.Compare(throws, _settings with { Reference = "Red" });

        Assert.Equal("RED", report.Reference);
        Assert.Equal(8, report.Lines[0].ReferenceThrows);
        Assert.Equal("ball \"red\" is taken as \"RED\": they differ in capital letters only", Assert.Single(report.Notices));
    }

    [Fact]
    public void Compare_NothingToCompare_IsAProblemInWords()
    {
        var throws = Throws(3).ToList();
        Assert.Equal("no throw names its ball; a comparison needs a ball column with two names in it", Problem([]));
        Assert.Equal("no throw names its ball; a comparison needs a ball column with two names in it", Problem(throws.Select(one => one with { Ball = " " })));
        Assert.Equal("one throw only, with the ball red; a comparison needs throws of two balls", Problem(throws.Take(1)));
        Assert.Equal("one ball only, red; a comparison needs throws of two balls", Problem(throws.Where(one => one.Ball == "red")));
        Assert.Equal("no throw with the ball \"red\"; allowed: blue", Problem(throws.Where(one => one.Ball == "blue")));
        Assert.StartsWith("nothing can be compared: no line was thrown with both balls", Problem(throws.Select(one => one with { Line = one.Ball })), StringComparison.Ordinal);

        string? Problem(IEnumerable<ComparedThrow> some) => BallComparer.Compare(some, _settings).Problem;
    }

    [Fact]
    public void Compare_NoMargin_Throws() =>
        Assert.Throws<ArgumentException>(() => BallComparer.Compare(Throws(3), _settings with { MarginFeet = 0 }));

    [Fact]
    public void Compare_TimesOfEveryThrow_GiveTheOrder()
    {
        var from = new DateTimeOffset(2026, 3, 1, 18, 0, 0, TimeSpan.Zero);
        var throws = Throws(10).Select(one => one with { Shot = one.Shot with { Time = from.AddMinutes(one.Number) } }).ToList();
        var sorted = BallComparer.Compare(throws, _settings);
        throws.Reverse();
        var shuffled = BallComparer.Compare(throws, _settings);
        Assert.Equal(sorted.Lines[0].Measures[0].Best, shuffled.Lines[0].Measures[0].Best);
        Assert.Equal(sorted.Lines[0].Measures[0].Paired, shuffled.Lines[0].Measures[0].Paired);
        Assert.Empty(sorted.Notices);
        throws[0] = throws[0] with { Shot = throws[0].Shot with { Time = from.AddDays(2) } };
        Assert.Contains("more than one day", Assert.Single(BallComparer.Compare(throws, _settings).Notices), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.004)]
    [InlineData(-0.002)]
    public void Sharpness_Parabola_IsItsCurvatureWhateverThePlaces(double bend)
    {
        // Boards = bend · (feet - 40)², so the direction changes by 2 · bend boards a foot a foot. By hand, on a lane with boards of 41.5/39 in.
        var expected = 2 * bend * (41.5 / 39) / 12 * 180 / Math.PI;
        Assert.Equal(expected, Of(25, 35, 45, 55)!.Value, 0.02);
        Assert.Equal(expected, Of(22, 43, 58)!.Value, 0.02);
        Assert.Null(Of(22, 35));
        Assert.Null(Of(15, 61));

        double? Of(params double[] feet)
        {
            var reading = new ShotReading { BreakpointBoard = 10, BreakpointFeet = 40 };
            foreach (var at in feet.Where(at => at <= 60))
            {
                reading.AddCrossing(at, 10 + (bend * (at - 40) * (at - 40)));
            }

            return Sharpness.Of(reading.Check(out _)!, LaneProfileReader.Default);
        }
    }

    [Fact]
    public void Balls_Places_AreInTheOrderInWhichTheyTurn()
    {
        var places = BallComparer.Compare(Throws(10), _settings).Balls;
        Assert.Equal(["red", "blue"], places.Select(place => place.Ball));
        Assert.Equal(1, places[1].BreakpointFeet.Value!.Value - places[0].BreakpointFeet.Value!.Value, 0.3);
    }

    /// <summary>Invented throws in turn: blue ends 2 boards further inside and turns a foot later; a mph costs 2 boards, a board of laydown 1.</summary>
    private static IEnumerable<ComparedThrow> Throws(int each, double apart = 2, double wear = 0, bool blocks = false, double faster = 0, int from = 0)
    {
        for (var i = 0; i < 2 * each; i++)
        {
            var blue = blocks ? i >= each : i % 2 == 1;
            double Off(ulong what) => SeededRandom.Unit(2026, ((ulong)(from + i) * 8) + what) - 0.5;
            var speed = 17 + (0.5 * Off(0)) + (blue ? faster : 0);
            var laydown = 22 + Off(1);
            var reading = new ShotReading
            {
                LaydownBoard = laydown,
                SpeedMilesPerHour = speed,
                SpeedPlace = SpeedPlace.Release,
                EntryBoard = laydown - (2 * (speed - 17)) + (wear * i) + (blue ? apart : 0) - 4 + (0.4 * Off(2)),
                BreakpointBoard = laydown - 12 + (0.4 * Off(3)),
                BreakpointFeet = 40 + (blue ? apart / 2 : 0) + Off(4),
            };
            yield return new ComparedThrow(from + i + 1, reading.Check(out _)!, blue ? "blue" : "red", null);
        }
    }
}
