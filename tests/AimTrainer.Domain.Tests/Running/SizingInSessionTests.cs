namespace AimTrainer.Domain.Tests;

public class SizingInSessionTests
{
    [Theory]
    [InlineData(""" "kind": "fixed" """, 4, 4, 4)]
    [InlineData(""" "kind": "ladder", "widthsBoards": [4, 3, 2], "hits": 1, "misses": 1, "ofLast": 1 """, 3, 4, 4)]
    [InlineData(""" "kind": "staircase", "hits": 1, "misses": 1, "stepBoards": 1 """, 3, 4, 5)]
    [InlineData(""" "kind": "weighted", "goalHitRate": 0.75, "narrowerOctaves": 0.25 """, 3.36, 5.66, 9)]
    public void Rule_HitThenTwoMisses_WidthFollows(string sizing, double afterHit, double afterMiss, double afterTwo)
    {
        // Weighted: 4 x 2^-0.25 = 3.36; a miss widens 3 times as far in octaves: 3.36 x 2^0.75 = 5.66; then 9.51, and 9 is the widest.
        var play = Play.Begun(Block(sizing));
        var widths = new List<double>();
        foreach (var miss in new[] { 0.0, 9.0, 9.0 })
        {
            play.Throw(miss);
            widths.Add(play.Shown.Targets[0].Target.Width.Boards);
        }

        Assert.Equal([afterHit, afterMiss, afterTwo], widths);
        Assert.Equal(widths, play.Events.OfType<SessionEvent.ShotGraded>().Select(graded => graded.NextWidths[0].Width.Boards));
    }

    [Fact]
    public void Scatter_SteadyBowler_NarrowsAndSaysWhenItIsUncertain()
    {
        var play = Play.Begun(Block(""" "kind": "scatter" """));
        double[] misses = [0.3, -0.4, 0.2, -0.1, 0.5, -0.3];
        for (var i = 0; i < 48; i++)
        {
            play.Throw(misses[i % misses.Length]);
        }

        var widths = play.Events.OfType<SessionEvent.ShotGraded>().Select(graded => graded.NextWidths[0]).ToList();
        Assert.True(widths[0].Uncertain);
        Assert.False(widths[^1].Uncertain);
        Assert.True(widths[^1].Width < widths[0].Width);
    }

    [Fact]
    public void Scatter_GrossMiss_IsFlaggedAndLeavesTheWidth()
    {
        var play = Play.Begun(Block(""" "kind": "scatter" """));
        for (var i = 0; i < 12; i++)
        {
            play.Throw(i % 2 == 0 ? 0.5 : -0.5);
        }

        var before = play.Shown.Targets[0].Target.Width;
        play.Throw(15.0);

        var next = play.Events.OfType<SessionEvent.ShotGraded>().Last().NextWidths[0];
        Assert.True(next.LeftOut);
        Assert.Equal(before, next.Width);
        Assert.Equal("miss", play.Graded.Last().Targets[0].Grade!.Name);
    }

    [Fact]
    public void Unmeasured_ChangesNoWidth()
    {
        var play = Play.Begun(Block(""" "kind": "staircase", "hits": 1, "misses": 1, "stepBoards": 1 """));
        play.Throw((double?)null);

        Assert.Equal(4, play.Shown.Targets[0].Target.Width.Boards);
    }

    [Fact]
    public void TwoAims_EachKeepsItsOwnWidth()
    {
        var play = Play.Begun(Play.Block(
            """{ "name": "a", "board": 5, "feet": 15, "widthBoards": 4 }, { "name": "b", "board": 10, "feet": 15, "widthBoards": 4 }""",
            """ "sizing": { "kind": "staircase", "hits": 1, "misses": 1, "stepBoards": 1 }, "order": { "kind": "serial" }, "until": { "shots": 9 } """));
        play.Throw(0.0);
        play.Throw(9.0);
        play.Throw(0.0);
        play.Throw(9.0);

        Assert.Equal([4, 4, 3, 5], play.Graded.Select(shot => shot.Targets[0].Target.Width.Boards));
    }

    [Fact]
    public void Staircase_Block_ReportsItsThreshold()
    {
        var play = Play.Begun(Block(""" "kind": "staircase", "hits": 1, "misses": 1, "stepBoards": 1, "reversals": 4 """, shots: 6));
        foreach (var miss in new[] { 0.0, 9.0, 0.0, 9.0, 0.0, 9.0 })
        {
            play.Throw(miss);
        }

        // 4 narrows to 3, widens back to 4, and so on: five turns, at 3, 4, 3, 4, 3; the last four have the mean 3.5.
        var threshold = Assert.Single(play.Ended.Thresholds);
        Assert.Equal(new TargetThreshold("spot", new Threshold(3.5, 4)), threshold);
    }

    private static string Block(string sizing, int shots = 60) => Play.Block(
        """{ "name": "spot", "board": 20, "feet": 15, "widthBoards": 4 }""",
        $$""" "sizing": { {{sizing}} }, "order": { "kind": "serial" }, "until": { "shots": {{shots}} } """);
}
