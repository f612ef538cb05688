namespace AimTrainer.Analysis.Tests;

public sealed class AccuracyAccumulatorTests
{
    [Fact]
    public void Result_NoShot_SaysOfEveryGroupingWhy()
    {
        var report = new AccuracyAccumulator(MadeShots.Settings).Result();
        Assert.Equal(0, report.Shots);
        Assert.Equal(Enum.GetValues<Grouping>(), report.GroupingsUnknown.Select(unknown => unknown.By));
        Assert.Empty(report.Groups);
    }

    [Fact]
    public void Result_Groupings_PutTogetherWhatBelongsTogether()
    {
        var accumulator = new AccuracyAccumulator(MadeShots.Settings);
        for (var i = 0; i < 24; i++)
        {
            var shot = MadeShots.Shot(null, [(15, i % 2 == 0 ? 5.0 : 18.0), (42, 9)], mph: 16.9 + (0.2 * (i % 2)), ball: i < 12 ? "one" : "two");
            accumulator.Add(shot.At(i + 1, (i % 2 == 0 ? 5 : 18, 15), (9, 42)) with { Session = "s", Drill = "d", Block = i < 20 ? "b1" : "b2" });
        }

        var report = accumulator.Result();
        Assert.Equal(["s 24"], Names(report, Grouping.Session));
        Assert.Equal(["d 24"], Names(report, Grouping.Drill));
        Assert.Equal(["b1 20", "b2 4"], Names(report, Grouping.Block));
        Assert.Equal(["one 12", "two 12"], Names(report, Grouping.Ball));
        Assert.Equal(["5@15 to 9@42 12", "18@15 to 9@42 12"], Names(report, Grouping.Line));
        Assert.Equal(["outside 12", "inside 12"], Names(report, Grouping.LanePart));
        Assert.Equal(["16 to 17 mph (release) 12", "17 to 18 mph (release) 12"], Names(report, Grouping.SpeedBand));
        Assert.Equal(["shots 1 to 10 10", "shots 11 to 20 10", "shots 21 to 30 4"], Names(report, Grouping.Ten));
        Assert.Empty(report.GroupingsUnknown);
        Assert.Equal(24, report.Line!.Shots);
        Assert.All(report.Groups, group => Assert.Equal(["first", "last"], group.PerTarget.Select(target => target.Name)));
    }

    [Theory]
    [InlineData(7.49, "outside")]
    [InlineData(7.5, "track")]
    [InlineData(14.49, "track")]
    [InlineData(14.5, "inside")]
    public void Result_LanePart_GoesByTheFirstTarget(double board, string part)
    {
        var accumulator = new AccuracyAccumulator(MadeShots.Settings);
        accumulator.Add(MadeShots.Shot(null, [(15, 10)]).At(1, (board, 15), (30, 42)));
        Assert.Equal([$"{part} 1"], Names(accumulator.Result(), Grouping.LanePart));
    }

    [Fact]
    public void Result_TiredBowler_ScattersMoreLate()
    {
        var chance = new Chance(3);
        var accumulator = new AccuracyAccumulator(MadeShots.Settings);
        for (var i = 0; i < 35; i++)
        {
            accumulator.Add(MadeShots.Shot(null, [(15, 20 + (chance.Normal() * (i < 10 ? 0.4 : i < 20 ? 1 : 3)))]).At(i + 1, (20, 15)));
        }

        var tired = accumulator.Result().EarlyAndLate[0];
        // The last whole ten; the five after it are too few.
        Assert.Equal(("first", "shots 1 to 10", "shots 21 to 30"), (tired.Target, tired.Comparison.Early, tired.Comparison.Late));
        Assert.True(tired.Comparison.SpreadRatio.Low > 1);
    }

    [Fact]
    public void Result_OneTen_HasNothingLate()
    {
        var accumulator = new AccuracyAccumulator(MadeShots.Settings);
        Enumerable.Range(1, 10).ToList().ForEach(i => accumulator.Add(MadeShots.Shot(null, [(15, i)]).At(i, (5, 15))));
        var only = accumulator.Result().EarlyAndLate[0].Comparison;
        Assert.Equal(("none", 0), (only.Late, only.LateShots));
        Assert.Null(only.SpreadRatio.Value);
    }

    [Fact]
    public void Add_MoreGroupsThanAreKept_PutsTheRestTogether()
    {
        var accumulator = new AccuracyAccumulator(MadeShots.Settings);
        for (var i = 0; i < AccuracyAccumulator.MostGroups + 5; i++)
        {
            accumulator.Add(MadeShots.Shot(null, [(15, 10)]).At(1, (10, 15)) with { Session = $"s{i}" });
        }

        var sessions = Names(accumulator.Result(), Grouping.Session);
        Assert.Equal(AccuracyAccumulator.MostGroups + 1, sessions.Count);
        Assert.Equal("(all others) 5", sessions[^1]);
    }

    [Fact]
    public void Add_LongSession_KeepsFiftyTens()
    {
        var accumulator = new AccuracyAccumulator(MadeShots.Settings);
        for (var i = 1; i <= 700; i++)
        {
            accumulator.Add(MadeShots.Shot(null, [(15, 10)]).At(i, (10, 15)));
        }

        Assert.Equal("shots 501 and on 200", Names(accumulator.Result(), Grouping.Ten)[^1]);
    }

    private static List<string> Names(AccuracyReport report, Grouping by) =>
        [.. report.Groups.AsEnumerable().Where(group => group.By == by).Select(group => $"{group.Name} {group.Shots}")];
}
