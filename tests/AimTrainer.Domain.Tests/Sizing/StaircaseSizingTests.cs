namespace AimTrainer.Domain.Tests;

public class StaircaseSizingTests
{
    private const string Responses = "HHHMHHHHMMHHMHHHHHHM";

    private static readonly StaircaseStep QuarterOctave = new StaircaseStep.ByFactor(Math.Pow(2, 0.25));

    // Source: reference statistics-checks.json, staircase.2d1u (deterministic trace), tolerance 1e-9.
    [Fact]
    public void After_TwoDownOneUp_FollowsTheTrace() => FollowsTheTrace(
        2,
        [
            8.0, 8.0, 6.727171322029717, 6.727171322029717, 8.0, 8.0, 6.727171322029717,
            6.727171322029717, 5.656854249492381, 6.727171322029717, 8.0, 8.0, 6.727171322029717, 8.0,
            8.0, 6.727171322029717, 6.727171322029717, 5.656854249492381, 5.656854249492381, 4.756828460010885, 5.656854249492381,
        ],
        [
            6.727171322029717, 8.0, 5.656854249492381, 8.0, 6.727171322029717, 8.0, 4.756828460010885,
        ],
        6.727171322029716);

    // Source: reference statistics-checks.json, staircase.3d1u (deterministic trace), tolerance 1e-9.
    [Fact]
    public void After_ThreeDownOneUp_FollowsTheTrace() => FollowsTheTrace(
        3,
        [
            8.0, 8.0, 8.0, 6.727171322029717, 8.0, 8.0, 8.0,
            6.727171322029717, 6.727171322029717, 8.0, 9.513656920021768, 9.513656920021768, 9.513656920021768, 11.31370849898476,
            11.31370849898476, 11.31370849898476, 9.513656920021768, 9.513656920021768, 9.513656920021768, 8.0, 9.513656920021768,
        ],
        [
            6.727171322029717, 8.0, 6.727171322029717, 11.31370849898476, 8.0,
        ],
        7.999999999999999);

    // Source: reference statistics-checks.json, updown.targets (Levitt 1971), tolerance 1e-12.
    [Theory]
    [InlineData(1, 0.5)]
    [InlineData(2, 0.7071067811865476)]
    [InlineData(3, 0.7937005259840998)]
    [InlineData(4, 0.8408964152537145)]
    public void HitRateWhenOneMissWidens_Published_Matches(int hits, double expected) =>
        Assert.Equal(expected, StaircaseSizing.HitRateWhenOneMissWidens(hits), 1e-12);

    // By hand: 5, hit hit 4.5, miss miss 5 (turn at 4.5), hit hit 4.5 (turn at 5), hit hit 4, miss miss 4.5 (turn at 4).
    [Fact]
    public void After_StepsInBoards_AveragesTheLastTurnsArithmetically()
    {
        var rule = new StaircaseSizing(2, 2, new StaircaseStep.ByBoards(Sequence.Boards(0.5)), 2);
        var states = rule.States(rule.Start(Sequence.Boards(5)), "HHMMHHHHMM").ToList();
        Assert.Equal([5, 5, 4.5, 4.5, 5, 5, 4.5, 4.5, 4, 4, 4.5], states.Select(state => state.Width.Boards));
        Assert.Null(states[5].Threshold);
        Assert.Equal(new Threshold(4.75, 2), states[6].Threshold);
        Assert.Equal(new Threshold(4.5, 2), states[10].Threshold);
    }

    [Fact]
    public void After_HitBetweenMisses_StartsTheirRunAnew() =>
        Assert.Equal([5, 5, 5, 5, 5.5], new StaircaseSizing(3, 2, new StaircaseStep.ByBoards(Sequence.Boards(0.5)), 2).Widths(5, "MHMM"));

    [Fact]
    public void After_AtALimit_StaysThereAndComesBackAtOnce()
    {
        var rule = new StaircaseSizing(1, 1, new StaircaseStep.ByBoards(Sequence.Boards(3)), 2);
        Assert.Equal([6, 9, 9, 9, 6, 3, 1, 1, 4], rule.Widths(6, "MMMHHHHM"));
    }

    [Fact]
    public void Start_NoWidth_IsTheMiddleOfTheLimits() =>
        Assert.Equal(3, new StaircaseSizing(2, 1, QuarterOctave, 4).Start(null).Width.Boards);

    [Fact]
    public void SetByHand_AfterAStep_IsNoTurn()
    {
        var rule = new StaircaseSizing(1, 1, QuarterOctave, 4);
        var narrower = rule.After(rule.Start(Sequence.Boards(5)), new SizedShot(true, BoardOffset.Zero));
        var set = rule.SetByHand(narrower, Sequence.Boards(7));
        var wider = Assert.IsType<StaircaseState>(rule.After(set, new SizedShot(false, BoardOffset.Zero)));
        Assert.Equal(7, set.Width.Boards);
        Assert.Equal(7 * Math.Pow(2, 0.25), wider.ExactBoards, 1e-12);
        Assert.Empty(wider.Reversals);
    }

    [Theory]
    [InlineData(0, 1, 4)]
    [InlineData(1, 0, 4)]
    [InlineData(1, 1, 1)]
    [InlineData(1, 1, 101)]
    public void Constructor_OutsideItsRange_Throws(int hits, int misses, int reversals) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new StaircaseSizing(hits, misses, QuarterOctave, reversals));

    [Fact]
    public void Step_ThatGoesNowhere_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new StaircaseStep.ByFactor(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new StaircaseStep.ByFactor(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => new StaircaseStep.ByBoards(BoardOffset.Zero));
        Assert.Throws<ArgumentNullException>(() => new StaircaseSizing(1, 1, null!, 4));
    }

    private static void FollowsTheTrace(int hitsToNarrow, double[] levels, double[] reversals, double threshold)
    {
        var rule = new StaircaseSizing(hitsToNarrow, 1, QuarterOctave, 20) { Widest = Sequence.Boards(20) };
        var states = rule.States(rule.Start(Sequence.Boards(8)), Responses).Cast<StaircaseState>().ToList();
        Assert.Equal(levels.Length, states.Count);
        Assert.All(states.Zip(levels), pair =>
        {
            Assert.Equal(pair.Second, pair.First.ExactBoards, 1e-9);
            Assert.Equal(pair.Second, pair.First.Width.Boards, 0.005);
        });
        Assert.Equal(reversals.Length, states[^1].Reversals.Count);
        Assert.All(states[^1].Reversals.Zip(reversals), pair => Assert.Equal(pair.Second, pair.First, 1e-9));
        Assert.Equal(reversals.Length, states[^1].Threshold?.Reversals);
        Assert.Equal(threshold, states[^1].Threshold!.Value.Boards, 1e-9);
    }
}
