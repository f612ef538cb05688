using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports.Tests;

public sealed class BallsReportTests
{
    private static readonly (double, double)[] _line = [(15, 15), (8, 40)];

    [Fact]
    public void OfRecord_TwoLinesInTurn_ComparesEachByTheAimsTargets()
    {
        var report = MadeBalls.Evening().Report();

        Assert.Equal(["board 15 at 15 ft to 8 at 40 ft", "board 20 at 15 ft to 12 at 40 ft"], report.Lines);
        Assert.Equal(["Red", "Blue"], report.Balls);
        Assert.Equal("Red", report.Comparison.Reference);
        var entry = report.Comparison.Lines[0].Measures.Single(found => found.Measure.Name == "entryBoard");

        // By hand: 10.5 boards over 18.8 of 20 ft less 8 boards, by the parabola after the breakpoint.
        Assert.InRange((10.5 * 0.94 * 0.94) - 8, entry.Best.Difference.Low!.Value, entry.Best.Difference.High!.Value);
        Assert.Equal(ComparisonVerdict.DifferentBeyondMargin, entry.Verdict);
        Assert.Equal(2, report.Sessions.Count);
        Assert.Equal((48, "Two-point line", true), (report.Throws.Count, report.Sessions[0].Drill, report.Sessions[0].Ended));
    }

    [Fact]
    public void OfRecord_LeftOut_EveryThrowIsListedWithItsReason()
    {
        var report = MadeBalls.Evening().Report();
        string[] reasons = [.. report.Throws.AsEnumerable().Where(one => one.Reasons.Count > 0).Select(one => $"{one.Number} {one.Counts} {BallsWords.Reasons(one)}")];

        Assert.Contains("9 False gross miss: launch angle ", reasons.Single(one => one.StartsWith("9 ", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.StartsWith("16 True board of the breakpoint only: breakpointBoard ", reasons.Single(one => one.StartsWith("16 ", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.Contains("21 False does not count: the pins were not set", reasons);
        Assert.Equal("48 throws, 46 in the comparison; 2 left out of all, 1 of a measure.", BallsWords.Summary(report));
    }

    [Theory]
    [InlineData(0.06, "The lane moved: in ten throws Red crossed 0.")]
    [InlineData(-0.06, "The lane moved: in ten throws Red crossed 0.")]
    [InlineData(0, "No move of the lane can be claimed: in ten throws Red crossed ")]
    public void LaneMoved_LaneThatMovesFromThrowToThrow_IsSaid(double boardsAThrow, string said)
    {
        var report = new MadeBalls().Session(_line, 24, 0, ["Red", "Blue"], change: (number, reading) => reading.EntryBoard += number * boardsAThrow).Report();
        var line = report.Comparison.Lines[0];
        var drift = line.Measures.Single(found => found.Measure.Name == "entryBoard").Adjusted!.Drift!;

        Assert.InRange(boardsAThrow, drift.Low!.Value, drift.High!.Value);
        var sentence = BallsWords.LaneMoved(report.Comparison, line);
        Assert.StartsWith(said, sentence, StringComparison.Ordinal);
        if (boardsAThrow != 0)
        {
            Assert.EndsWith($" further {(boardsAThrow > 0 ? "inside" : "outside")} at the pins. The differences are as if it had not.", sentence, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void LaneMoved_FewThrows_SaysWhatIsMissing()
    {
        var few = new MadeBalls().Session(_line, 3, 0, ["Red", "Blue"]).Report();
        Assert.Equal("Whether the lane moved is not known: too few throws with a measured board.", BallsWords.LaneMoved(few.Comparison, few.Comparison.Lines[0]));
    }

    [Fact]
    public void OfRecord_AnotherDay_IsAnotherLaneAndSaysTheDay()
    {
        var report = new MadeBalls().Session(_line, 8, 0, ["Red", "Blue"]).Session(_line, 8, 72, ["Red", "Blue"]).Report();
        Assert.Equal(["board 15 at 15 ft to 8 at 40 ft, 2026-09-01", "board 15 at 15 ft to 8 at 40 ft, 2026-09-04"], report.Lines);
        Assert.Equal(2, report.Comparison.Overall[0].Lines);

        // Two sessions of one evening are one visit: the second ball may be thrown in the second.
        var evening = new MadeBalls().Session(_line, 8, 0, [null], usual: "Red").Session(_line, 8, 1, [null], usual: "Blue").Report();
        Assert.Equal(["board 15 at 15 ft to 8 at 40 ft"], evening.Lines);
        Assert.Equal(8, Assert.Single(evening.Comparison.Lines).BallThrows);
    }

    [Fact]
    public void OfRecord_TwoVisitsOnOneDay_SayTimeAndLane()
    {
        var report = new MadeBalls().Session(_line, 2, 0, ["Red", "Blue"]).Session(_line, 2, -13, ["Red", "Blue"]).Report();
        Assert.Equal(["board 15 at 15 ft to 8 at 40 ft, 2026-09-01 05:00 on lane 3", "board 15 at 15 ft to 8 at 40 ft, 2026-09-01 18:00 on lane 3"], report.Lines);
    }

    [Fact]
    public void OfRecord_BallOfTheReadingElseOfTheSession()
    {
        var report = new MadeBalls().Session(_line, 6, 0, ["Blue", null], usual: "Red").Report();
        Assert.Equal(["Blue", "Red"], report.Balls);
        Assert.Equal("Blue", report.Comparison.Reference);
        Assert.Equal(["Blue", "Red"], report.Sessions[0].Balls);
    }

    [Fact]
    public void OfRecord_ChosenBalls_OthersAreNotInItAndTheFirstIsTheReference()
    {
        var report = new MadeBalls().Session(_line, 6, 0, ["Red", "Blue", "Green"]).Report(new BallsQuestion { Balls = ["green", "RED", "Grey"] });
        Assert.Equal(12, report.Throws.Count);
        Assert.Equal("Green", report.Comparison.Reference);
        Assert.Equal(["6 throws with other balls, or with a ball that nobody named, are not in it", "no throw with the ball \"grey\" in these sessions"], report.Notes.Select(note => note.Replace("Grey", "grey", StringComparison.Ordinal)));
    }

    [Fact]
    public void OfRecord_NamesThatDifferInCapitals_AreOneBall()
    {
        var report = new MadeBalls().Session(_line, 8, 0, ["Red", "Blue", "red ", " BLUE"]).Report();
        Assert.Equal(["Red", "Blue"], report.Balls);
        Assert.Equal(16, report.Comparison.Lines[0].BallThrows);
        Assert.Equal(2, report.Comparison.Notices.Count(notice => notice.Contains("capital letters only", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("one ball", "one ball only, Red; a comparison needs throws of two balls")]
    [InlineData("one throw", "one throw only, with the ball Red; a comparison needs throws of two balls")]
    [InlineData("no ball", "no throw names its ball; a comparison needs a ball column with two names in it")]
    [InlineData("all left out", "no throw names its ball; a comparison needs a ball column with two names in it")]
    [InlineData("nothing measured", "nothing can be compared: no line was thrown with both balls, or nothing was measured with both; throw both at the same line")]
    public void OfRecord_NothingToCompare_SaysWhyAndStaysWhole(string made, string problem)
    {
        var report = Of(made);
        Assert.Equal(problem, report.Comparison.Problem);
        Assert.Empty(report.Comparison.Lines.SelectMany(line => line.Measures));
        Assert.Equal([BallsWords.Capital(problem) + "."], BallsWords.Answer(report.Comparison));
    }

    [Fact]
    public void OfRecord_OneBall_StillSaysWhereItFits()
    {
        var report = Of("one ball");
        Assert.StartsWith("On board 15 at 15 ft to 8 at 40 ft, the one that turns first before the others: Red at ", report.Fits[0], StringComparison.Ordinal);
    }

    [Fact]
    public void OfRecord_FewThrows_SaysHowManyMore()
    {
        var report = new MadeBalls().Session(_line, 3, 0, ["Red", "Blue"]).Report();
        Assert.Equal(
            ["Blue on board 15 at 15 ft to 8 at 40 ft: 2 more good throws of Blue and 2 more good throws of Red until anything can be said."], BallsWords.More(report.Comparison));
    }

    [Fact]
    public void OfRecord_NotTheSameThrow_IsLeftOutByTheDrillsOwnRule()
    {
        var report = new MadeBalls().Session(_line, 6, 0, ["Red", "Blue"], grade: shot => shot.Number switch
        {
            3 => shot with { Comparability = new Comparability(false, ["speed 18 mph, expected 17 within 0.5"]) },
            4 => shot with { Comparability = new Comparability(null, ["speed not measured"]) },
            _ => shot,
        }).Report();
        Assert.Equal("not the same throw: speed 18 mph, expected 17 within 0.5", BallsWords.Reasons(report.Throws[2]));
        Assert.Equal("it cannot be told whether it was the same throw: speed not measured", BallsWords.Reasons(report.Throws[3]));
        Assert.Equal(2, report.Throws.Count(one => !one.Counts));
    }

    [Fact]
    public void OfRecord_SimulatedAndOtherHand_AreNeverMixed()
    {
        var real = new MadeBalls().Session(_line, 2, 10, ["Red"]);
        var invented = new MadeBalls(simulated: true).Session(_line, 2, 0, ["Red"]);
        var left = new MadeBalls(hand: Hand.Left).Session(_line, 2, 20, ["Red"]);
        var report = BallsBuilder.OfRecord(new BallsQuestion(), [.. real.Sources, .. invented.Sources, .. left.Sources], 3, MadeBalls.Start);

        Assert.False(report.Simulated);
        Assert.Equal(Hand.Left, report.Hand);
        Assert.Equal(2, report.Throws.Count);
        Assert.Equal(
            [
                "1 simulated session left out: simulated and real throws are never mixed",
                "1 session of the other hand left out: its boards count from the other edge",
                "only the newest 40 sessions are in it; 3 older ones not",
            ],
            report.Notes);
        Assert.True(new MadeBalls(simulated: true).Session(_line, 2, 0, ["Red"]).Report().Simulated);
    }

    [Fact]
    public void MeanPath_PlacesThatHalfTheThrowsHave_AreAveraged()
    {
        var report = new MadeBalls().Session(_line, 4, 0, ["Red"], change: (number, reading) => reading.BreakpointFeet = number < 3 ? 40 : 41 + number).Report();
        var mean = report.MeanPath("red", report.Lines[0]);
        Assert.Equal([0, 15, 30, 40, 45, 52, 60], mean.Select(place => place.Feet));
        Assert.Equal(report.Throws.Average(one => one.Places.Single(place => place.Feet == 30).Board), mean[2].Board, 1e-12);
    }

    internal static BallsReport Of(string made) => made switch
    {
        "one ball" => new MadeBalls().Session(_line, 6, 0, ["Red"]).Report(),
        "one throw" => new MadeBalls().Session(_line, 1, 0, ["Red"]).Report(),
        "no ball" => new MadeBalls().Session(_line, 6, 0, [null]).Report(),
        "all left out" => new MadeBalls().Session(_line, 6, 0, ["Red", "Blue"], grade: shot => shot with { VoidReason = "all of it" }).Report(),
        "nothing measured" => new MadeBalls().Session(_line, 6, 0, ["Red", "Blue"], grade: shot => shot with
        {
            Shot = shot.Shot with { Crossings = [], Laydown = null, Breakpoint = null, Entry = null, EntryAngle = null },
        }).Report(),
        "few" => new MadeBalls().Session(_line, 3, 0, ["Red", "Blue"]).Report(),
        "none" => new MadeBalls().Report(),
        "simulated" => MadeBalls.Evening(simulated: true).Report(),
        "left" => MadeBalls.Evening("Lee Ó", Hand.Left).Report(),
        "bag" => new MadeBalls().Session(_line, 12, 0, ["Red", "Blue", "Green", "Grey", "Old"], apart: 1.3).Report(),
        "wild" => new MadeBalls("=cmd|' /C calc'!A0\"<script src=//x>\u0007" + new string('W', 150))
            .Session(_line, 120, 0, ["@sum" + new string('R', 120), "<b>Blue</b>"]).Session(_line, 8, 50, ["@sum" + new string('R', 120), "<b>Blue</b>"]).Report(),
        _ => MadeBalls.Evening().Report(),
    };
}
