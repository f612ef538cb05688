using System.Text.Json;
using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports.Tests;

public sealed class SentenceRulesTests
{
    private static readonly SentenceRules Right = new(Hand.Right);

    [Theory]
    // measured, mean, low, high: what is said.
    [InlineData(9, 1.0, 0.5, 1.5, "Where the shots go on average is not known yet: 9 of 10 measured shots at one target.")]
    [InlineData(10, 0.8, 0.3, 1.3, "Over 10 shots at board 10 at the arrows the average is 0.80 boards to the left (95 %: 0.30 to 1.30).")]
    [InlineData(40, -0.8, -1.3, -0.3, "Over 40 shots at board 10 at the arrows the average is 0.80 boards to the right (95 %: 0.30 to 1.30).")]
    [InlineData(40, 0.1, -0.4, 0.6, "Over 40 shots at board 10 at the arrows no lean to either side shows: 0.10 left on average (95 %: 0.40 right to 0.60 left).")]
    [InlineData(40, 0.5, null, null, "All 40 readings at board 10 at the arrows are the same, 0.50 left: too coarse or too few to say how sure that is.")]
    public void Lean_ByTable_SaysWhatTheLimitsAllow(int measured, double mean, double? low, double? high, string said)
    {
        var sentence = Right.Lean(Target(measured, mean, low, high));
        Assert.Equal(said, sentence.Text);
        Assert.Equal(measured < SentenceRules.FewestMeasured, sentence.Figure.Value is null);
        Assert.True(sentence.Figure.Low is not null || sentence.Figure.Why is not null);
    }

    [Fact]
    public void Lean_LeftHander_TurnsTheSides() =>
        Assert.Contains("0.80 boards to the right", new SentenceRules(Hand.Left).Lean(Target(40, 0.8, 0.3, 1.3)).Text, StringComparison.Ordinal);

    [Fact]
    public void Lean_Nothing_SaysHowManyAreNeeded() =>
        Assert.Equal("Where the shots go on average is not known yet: 0 of 10 measured shots at one target.", Right.Lean(null).Text);

    [Theory]
    // split shots, limits of laydown, of angle and of the ball: what is said.
    [InlineData(9, 0.6, 0.9, 0.1, 0.3, -0.1, 0.1, "Why they scatter is not known yet: 9 of 10 shots whose laydown and angle are known.")]
    [InlineData(12, 0.6, 0.9, 0.1, 0.3, -0.1, 0.1, "Most of the scatter at 40 ft comes from the laydown: 75 % (95 %: 60 % to 90 %; 12 shots).")]
    [InlineData(12, 0.1, 0.3, 0.6, 0.9, -0.1, 0.1, "Most of the scatter at 40 ft comes from the angle: 75 % (95 %: 60 % to 90 %; 12 shots).")]
    [InlineData(12, 0.1, 0.3, -0.1, 0.1, 0.6, 0.9, "Most of the scatter at 40 ft comes from the ball beyond the straight part: 75 % (95 %: 60 % to 90 %; 12 shots).")]
    [InlineData(12, 0.2, 0.6, 0.3, 0.9, -0.1, 0.1, "Which cause scatters the shots at 40 ft most cannot be told yet; it may be the angle: 60 % (95 %: 30 % to 90 %; 12 shots).")]
    public void Cause_ByTable_NamesACauseOnlyWhenItsLimitsLieAboveTheNext(
        int split, double laydownLow, double laydownHigh, double angleLow, double angleHigh, double ballLow, double ballHigh, string said)
    {
        var sentence = SentenceRules.Cause(Causes(split, (laydownLow, laydownHigh), (angleLow, angleHigh), (ballLow, ballHigh)));
        Assert.Equal(said, sentence.Text);
        Assert.Equal(split < ReportCauses.Fewest, sentence.Figure.Value is null);
    }

    [Theory]
    // sessions, fall of the log spread a session, verdict: how the sentence begins.
    [InlineData(0, 0.0, ImprovementVerdict.TooFew, "Whether practice helps is not known: no test block")]
    [InlineData(7, -0.2, ImprovementVerdict.TooFew, "Whether practice helps is not known yet: 7 of 8 sessions with a test at the arrows.")]
    [InlineData(12, -0.2, ImprovementVerdict.Improved, "Improved: over 12 sessions with a test at the arrows, 18.1 % less spread a session (99 %: ")]
    [InlineData(12, 0.2, ImprovementVerdict.Worse, "The spread grew: over 12 sessions with a test at the arrows, 22.1 % more spread a session (99 %: ")]
    [InlineData(15, 0.0, ImprovementVerdict.NotShown, "Over 12 sessions with a test at the arrows neither more nor less spread can be told: ")]
    public void Trend_ByTable_ImprovedOnlyByTheRule(int sessions, double slope, ImprovementVerdict verdict, string begins)
    {
        var trend = Trend(sessions, slope);
        var sentence = SentenceRules.Trend(trend);
        Assert.Equal(verdict, trend.Verdict);
        Assert.StartsWith(begins, sentence.Text, StringComparison.Ordinal);
        Assert.Equal(verdict == ImprovementVerdict.Improved, sentence.Text.Contains("mproved", StringComparison.Ordinal));
        Assert.Equal(verdict == ImprovementVerdict.TooFew, sentence.Figure.Value is null);
    }

    [Theory]
    // measured, mean miss, its limits, cause that stands out, sessions with a test, slope: which rule.
    [InlineData(9, 2.0, 1.5, 2.5, null, 12, 0.2, WorkOnRule.Measure, "ten-shot-spread")]
    [InlineData(10, 2.0, 1.5, 2.5, "laydown", 12, 0.2, WorkOnRule.Lean, "three-rings")]
    [InlineData(10, 0.4, 0.3, 0.5, "laydown", 12, 0.2, WorkOnRule.Laydown, "straight-three")]
    [InlineData(10, 2.0, -0.1, 4.1, "angle", 12, 0.2, WorkOnRule.Angle, "two-point-line")]
    [InlineData(10, 0.0, -0.1, 0.1, "ball", 12, 0.2, WorkOnRule.Ball, "same-throw")]
    [InlineData(10, 0.0, -0.1, 0.1, null, 12, 0.2, WorkOnRule.Grew, "fitted-target")]
    [InlineData(10, 0.0, -0.1, 0.1, null, 7, 0.2, WorkOnRule.Test, "session-start-test")]
    [InlineData(10, 0.0, -0.1, 0.1, null, 0, 0.0, WorkOnRule.Test, "session-start-test")]
    [InlineData(10, 0.0, -0.1, 0.1, null, 12, -0.2, WorkOnRule.Narrow, "narrow-at-arrow")]
    [InlineData(10, 0.0, -0.1, 0.1, null, 15, 0.0, WorkOnRule.Narrow, "narrow-at-arrow")]
    public void WorkOn_ByTable_TakesTheFirstRule(
        int measured, double mean, double low, double high, string? cause, int sessions, double slope, WorkOnRule rule, string drill)
    {
        (double, double) Of(string name) => name == cause ? (0.7, 0.9) : (0.0, 0.2);
        var causes = cause is null ? new ReportCauses(null, 0, 0, null, "no shot") : Causes(30, Of("laydown"), Of("angle"), Of("ball"));
        var work = Right.WorkOn(Target(measured, mean, low, high), causes, Trend(sessions, slope));
        Assert.Equal((rule, drill), (work.Rule, work.DrillId));
    }

    [Fact]
    public void Drills_OfEveryRule_ComeWithTheProgram()
    {
        var drills = Directory.GetFiles(Path.Combine(Repository.Root, "drills"), "*.json").Where(file => !file.EndsWith("schema.json", StringComparison.Ordinal))
            .Select(file => JsonDocument.Parse(File.ReadAllText(file)).RootElement)
            .ToDictionary(drill => drill.GetProperty("id").GetString()!, drill => drill.GetProperty("name").GetString()!);
        foreach (var rule in Enum.GetValues<WorkOnRule>())
        {
            foreach (var atTheArrows in (bool[])[true, false])
            {
                var (id, name) = PracticeDrills.For(rule, atTheArrows);
                Assert.Equal(name, drills[id]);
            }
        }
    }

    private static LaneTarget Target(int measured, double mean, double? low, double? high) => new(
        "t", 15, 10, 3, false, measured, measured, 0, new BoundedEstimate(mean, low, high, low is null ? EstimateLimits.NoScatter : null),
        BoundedEstimate.Unknown("not needed"), new LaneEllipse(null, null, "not needed"), []);

    private static ReportCauses Causes(int split, (double Low, double High) laydown, (double Low, double High) angle, (double Low, double High) ball)
    {
        static BoundedEstimate Share((double Low, double High) limits) => BoundedEstimate.Between((limits.Low + limits.High) / 2, limits.Low, limits.High);
        var none = BoundedEstimate.Unknown("not needed");
        var shares = new VarianceShares(1, 1, 1, 1, 0, 0, 0, Share(laydown), Share(angle), Share(ball));
        return new ReportCauses("a line", split, split, new TargetCauses("t", Feet.FromFeet(40), split, none, none, none, none, none, none, shares, null, null, null, []), null);
    }

    /// <summary>A trend of tests whose log spread moves by the slope with a saw tooth that no chance is needed for.</summary>
    private static ReportTrend Trend(int sessions, double slope)
    {
        if (sessions == 0)
        {
            return new MadeBowler().Report().Trend;
        }

        double Spread(int week) => 2 * Math.Exp((slope * week) + (0.05 * ((week % 3) - 1)));
        var points = Enumerable.Range(0, sessions).Select(week => new TrendPoint(week + 1, Spread(week))).ToList();
        var figures = TrendFigures.Of(points, TrendScale.Logarithm);
        return new ReportTrend("at the arrows", [], 0, [], figures, null);
    }
}
