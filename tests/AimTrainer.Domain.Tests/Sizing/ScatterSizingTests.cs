namespace AimTrainer.Domain.Tests;

public class ScatterSizingTests
{
    private static readonly double[] TenMisses = [0.4, -0.8, 1.1, 0.8, -0.3, 2.0, 0.1, -1.1, 1.5, 0.3];

    private static readonly ScatterSizing Rule = new(0.75, 0.98, Sequence.Boards(1.6));

    // Source: reference statistics-checks.json, width.n0: 6.0840 boards, to half a board.
    [Fact]
    public void Start_NoWidth_IsThePriorsWidthToHalfABoard()
    {
        var state = Assert.IsType<ScatterState>(Rule.Start(null));
        Assert.Equal(6, state.Width.Boards);
        Assert.Equal(6.084048819911013, state.ExactBoards, 1e-7);
    }

    [Fact]
    public void Start_GivenWidth_IsShownAsItIs() => Assert.Equal(3.2, Rule.Start(Sequence.Boards(3.2)).Width.Boards);

    [Fact]
    public void Start_PriorTooWide_IsTheLimit() =>
        Assert.Equal(9, new ScatterSizing(0.75, 0.98, Sequence.Boards(4)).Start(null).Width.Boards);

    // Source: reference statistics-checks.json, width.data, nig_w75 3.0528210996817178 (no forgetting), to half a board. After
    // ten shots from 6 boards the limit of 20 % no longer holds it back.
    [Fact]
    public void After_TenShotsWithoutForgetting_ShowsThePublishedWidth()
    {
        var state = Assert.IsType<ScatterState>(Throw(new ScatterSizing(0.75, 1, Sequence.Boards(1.6)), TenMisses));
        Assert.Equal(3.0528210996817178, state.ExactBoards, 1e-7);
        Assert.Equal(3, state.Width.Boards);
    }

    // By hand: misses of nothing ask for far less than 9 boards. A fifth less each time would be 7.2, 6, 4.8, 4, 3.2, 2.8, 2.4, 2: of the half
    // boards the next that is no further.
    [Fact]
    public void After_FarTooWide_NarrowsByAtMostAFifth()
    {
        var rule = new ScatterSizing(0.75, 0.98, Sequence.Boards(0.3));
        var state = rule.Start(Sequence.Boards(9));
        var widths = new List<double>();
        for (var shot = 0; shot < 8; shot++)
        {
            state = rule.After(state, new SizedShot(true, BoardOffset.Zero));
            widths.Add(state.Width.Boards);
        }

        Assert.Equal([7.5, 6, 5, 4, 3.5, 3, 2.5, 2], widths);
    }

    [Fact]
    public void After_NarrowAndGettingWilder_IsNotFrozenByRounding()
    {
        var rule = new ScatterSizing(0.75, 0.98, Sequence.Boards(0.3));
        var state = rule.Start(Sequence.Boards(1));
        for (var shot = 0; shot < 60; shot++)
        {
            state = rule.After(state, new SizedShot(false, Sequence.Boards(shot % 2 == 0 ? 3 : -3)));
        }

        Assert.True(state.Width.Boards > 6);
    }

    [Fact]
    public void After_GrossMiss_IsFlaggedAndLeftOutOfTheWidthOnly()
    {
        var before = Assert.IsType<ScatterState>(Throw(Rule, TenMisses));
        var gross = Assert.IsType<ScatterState>(Rule.After(before, new SizedShot(false, Sequence.Boards(12))));
        Assert.True(gross.LastWasGross);
        Assert.Equal(before.Width, gross.Width);
        Assert.Equal(before.Posterior, gross.Posterior);
        Assert.False(Rule.After(gross, new SizedShot(true, Sequence.Boards(0.2))).LastWasGross);
    }

    [Fact]
    public void After_WildMissAmongTooFew_IsNotFlagged() =>
        Assert.False(Rule.After(Throw(Rule, TenMisses[..7]), new SizedShot(false, Sequence.Boards(12))).LastWasGross);

    [Fact]
    public void After_ThirdGrossMissInARow_IsTakenForAChange()
    {
        var state = Throw(Rule, [.. TenMisses, 12, 12.5]);
        Assert.True(state.LastWasGross);
        var third = Assert.IsType<ScatterState>(Rule.After(state, new SizedShot(false, Sequence.Boards(11.5))));
        Assert.False(third.LastWasGross);
        Assert.True(third.Width > state.Width);
        Assert.False(Rule.After(third, new SizedShot(false, Sequence.Boards(12))).LastWasGross);
    }

    // Whole-board readings tie most misses: a miss of one board, the next reading there is, must not count as gross; one of 5 must.
    [Fact]
    public void After_WholeBoardReadings_OneBoardIsNotGross()
    {
        var state = Throw(Rule, [0, 0, 0, 0, 0, 0, 0, 1, 0, 0]);
        Assert.False(Rule.After(state, new SizedShot(true, Sequence.Boards(1))).LastWasGross);
        Assert.False(Rule.After(state, new SizedShot(true, Sequence.Boards(-2))).LastWasGross);
        Assert.True(Rule.After(state, new SizedShot(false, Sequence.Boards(5))).LastWasGross);
    }

    // The weight of 19.2 shots is where the spread is known to 15 %: 1 + 0.98 + ... reaches it with the 24th.
    [Fact]
    public void Uncertain_UntilTwentyShotsWeigh_ThenNot()
    {
        var misses = Enumerable.Range(0, 24).Select(i => TenMisses[i % 10]).ToArray();
        Assert.True(Rule.Start(null).Uncertain);
        Assert.True(Throw(Rule, misses[..23]).Uncertain);
        Assert.False(Throw(Rule, misses).Uncertain);
    }

    [Fact]
    public void SetByHand_AWidth_MovesOnFromThereWithWhatIsKnown()
    {
        var before = Assert.IsType<ScatterState>(Throw(Rule, TenMisses));
        var set = Assert.IsType<ScatterState>(Rule.SetByHand(before, Sequence.Boards(8)));
        Assert.Equal(8, set.Width.Boards);
        Assert.Equal(before.Posterior, set.Posterior);
        Assert.Equal(6.5, Rule.After(set, new SizedShot(true, BoardOffset.Zero)).Width.Boards);
    }

    [Theory]
    [InlineData(0, 0.98, 1.6)]
    [InlineData(1, 0.98, 1.6)]
    [InlineData(0.75, 0, 1.6)]
    [InlineData(0.75, 1.01, 1.6)]
    [InlineData(0.75, 0.98, 0)]
    [InlineData(double.NaN, 0.98, 1.6)]
    [InlineData(0.75, double.NaN, 1.6)]
    public void Constructor_OutsideItsRange_Throws(double goal, double keep, double spread) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ScatterSizing(goal, keep, Sequence.Boards(spread)));

    private static SizingState Throw(ScatterSizing rule, double[] misses) => misses.Aggregate(
        rule.Start(null),
        (state, miss) => rule.After(state, new SizedShot(Math.Abs(miss) * 2 <= state.Width.Boards, Sequence.Boards(miss))));
}
