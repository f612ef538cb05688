namespace AimTrainer.Domain.Tests;

public sealed class DrillResolverTests
{
    private static readonly DrillSetting Plain = new(Hand.Right, LaneProfileReader.Default, null, null);

    [Theory]
    [InlineData(Hand.Right)]
    [InlineData(Hand.Left)]
    public void Resolve_ArrowTwo_IsBoardTenAtTheArrowsDistanceForEitherHand(Hand hand)
    {
        // Source: trade literature, arrows on boards 5, 10, ... 35 from either edge; 15 ft is the working distance.
        var at = Target(new TargetPlace.AtMark(MarkerKind.Arrow, 2, BoardOffset.Zero), Plain with { Hand = hand });

        Assert.Equal((10, 15), (at.Centre.Boards, at.Distance.Value));
    }

    [Fact]
    public void Resolve_DotAndDownlaneMark_LieAtTheirOwnDistance()
    {
        var dot = Target(new TargetPlace.AtMark(MarkerKind.Dot, 4, BoardOffset.FromBoards(-1)), Plain);
        var downlane = Target(new TargetPlace.AtMark(MarkerKind.Downlane, 1, BoardOffset.Zero), Plain);

        Assert.Equal((10, 7.5), (dot.Centre.Boards, dot.Distance.Value));
        Assert.Equal((10, 41.5), (downlane.Centre.Boards, downlane.Distance.Value));
    }

    [Fact]
    public void Resolve_MarkTheLaneHasNot_SaysSo() => Assert.Equal(
        "target \"t\": lane \"usual lane\" has no arrow 8 (it has 7): choose another mark, or add it to the lane profile",
        Problem(new TargetPlace.AtMark(MarkerKind.Arrow, 8, BoardOffset.Zero), Plain));

    [Fact]
    public void Resolve_RecordedBreakpoint_IsUsedWithItsDistance()
    {
        var setting = Plain with { Breakpoint = new Breakpoint(Board.FromBoards(7.25), Feet.FromFeet(42)) };
        var at = Target(new TargetPlace.AtBreakpoint(BoardOffset.FromBoards(1), new Crossing(Feet.FromFeet(40), Board.FromBoards(9))), setting);

        Assert.Equal((8.25, 42), (at.Centre.Boards, at.Distance.Value));
    }

    [Fact]
    public void Resolve_NoBreakpoint_TakesTheOtherPlaceAsItIs()
    {
        var place = new TargetPlace.AtBreakpoint(BoardOffset.FromBoards(1), new Crossing(Feet.FromFeet(40), Board.FromBoards(9)));

        Assert.Equal((9, 40), (Target(place, Plain).Centre.Boards, Target(place, Plain).Distance.Value));
        Assert.Equal(9, Target(place, Plain with { Breakpoint = new Breakpoint(Board.FromBoards(7), null) }).Centre.Boards);
    }

    [Fact]
    public void Resolve_NoBreakpointAndNoOtherPlace_SaysWhatToDo()
    {
        var place = new TargetPlace.AtBreakpoint(BoardOffset.Zero, null);

        Assert.Equal(
            "target \"t\": this drill aims at the bowler's recorded breakpoint and none is recorded: log one, or give \"otherwise\"",
            Problem(place, Plain));
        Assert.Contains("has no distance", Problem(place, Plain with { Breakpoint = new Breakpoint(Board.FromBoards(7), null) }), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(35, 4)]
    [InlineData(37, 6)]
    [InlineData(38, 7)]
    [InlineData(39, 8)]
    [InlineData(42, 11)]
    [InlineData(43, 12)]
    [InlineData(45, 14)]
    public void Resolve_PatternExit_IsTheLengthLess31AtThatDistance(double feet, double board)
    {
        // Source: rule of 31 as printed by several coaching pages (35 to 4, 39 to 8, 43 to 12 ...); common practice.
        var given = Target(new TargetPlace.AtPatternExit(Feet.FromFeet(feet), BoardOffset.Zero), Plain);
        var session = Target(new TargetPlace.AtPatternExit(null, BoardOffset.Zero), Plain with { PatternLength = Feet.FromFeet(feet) });

        Assert.Equal((board, feet), (given.Centre.Boards, given.Distance.Value));
        Assert.Equal(given, session);
    }

    [Fact]
    public void Resolve_PatternUnknownOrImpossible_SaysWhatToDo()
    {
        var place = new TargetPlace.AtPatternExit(null, BoardOffset.Zero);

        Assert.Contains("length is not known", Problem(place, Plain), StringComparison.Ordinal);
        Assert.Contains("32 to 52 ft", Problem(place, Plain with { PatternLength = Feet.FromFeet(60) }), StringComparison.Ordinal);
    }

    [Fact]
    public void Resolve_OffTheLane_SaysSo() => Assert.Contains(
        "board -4",
        Problem(new TargetPlace.AtMark(MarkerKind.Arrow, 1, BoardOffset.FromBoards(-9)), Plain),
        StringComparison.Ordinal);

    [Fact]
    public void Resolve_Walk_StopsExactlyAtItsEndAndFollowsByTheRatio()
    {
        var resolution = DrillResolver.Resolve(WalkingBlock(10, 17, 3, 0.5m), Plain);

        Assert.Empty(resolution.Problems);
        Assert.Equal([10, 13, 16, 17], resolution.WalkPlaces.Select(place => place.Targets[0].Centre.Boards));
        Assert.Equal([7, 8.5, 10, 10.5], resolution.WalkPlaces.Select(place => place.Targets[1].Centre.Boards));
        Assert.Equal(resolution.Aims[0], resolution.WalkPlaces[0]);
    }

    [Theory]
    [InlineData(17, 10, 3, new double[] { 17, 14, 11, 10 })]
    [InlineData(10, 10, 3, new double[] { 10 })]
    [InlineData(10, 16, 3, new double[] { 10, 13, 16 })]
    public void Resolve_Walk_GoesEitherWay(double from, double to, double move, double[] expected) => Assert.Equal(
        expected,
        DrillResolver.Resolve(WalkingBlock(from, to, move, 0), Plain).WalkPlaces.Select(place => place.Targets[0].Centre.Boards));

    [Fact]
    public void Resolve_WalkOffTheLane_NamesTheTarget()
    {
        var resolution = DrillResolver.Resolve(WalkingBlock(10, 30, 2, -1), Plain);

        Assert.Equal(["target \"far\" would walk off the lane, to board -1: end the walk earlier, or give the target another walkRatio"], resolution.Problems);
        Assert.Empty(resolution.WalkPlaces);
        Assert.Empty(resolution.Aims);
    }

    [Fact]
    public void Resolve_LineNotNearestFirst_SaysSo()
    {
        var block = WalkingBlock(10, 12, 1, 1);
        var far = Plan("far", new TargetPlace.AtBoard(Board.FromBoards(8), Feet.FromFeet(15)));
        block = block with { Aims = [new AimPlan("line", [block.Aims[0].Targets[0], far])] };

        Assert.Contains("not beyond \"near\" at 15 ft", Assert.Single(DrillResolver.Resolve(block, Plain).Problems), StringComparison.Ordinal);
    }

    private static DrillBlock WalkingBlock(double from, double to, double move, decimal ratio) => new()
    {
        Name = "b",
        Kind = BlockKind.Training,
        Aims =
        [
            new AimPlan("line",
            [
                Plan("near", new TargetPlace.AtBoard(Board.FromBoards(from), Feet.FromFeet(15))),
                Plan("far", new TargetPlace.AtBoard(Board.FromBoards(7), Feet.FromFeet(40))) with { WalkRatio = ratio },
            ]),
        ],
        Order = new Order.Walk(new TargetPlace.AtBoard(Board.FromBoards(to), Feet.FromFeet(0)), BoardOffset.FromBoards(move), new WalkWhen.AfterShots(2), WalkEnd.Stop),
        Until = new BlockEnd(),
        Feedback = new Feedback(new FeedbackWhen.Every(), FeedbackSays.Exact),
    };

    private static TargetPlan Plan(string name, TargetPlace place) => new() { Name = name, Place = place, Width = BoardOffset.FromBoards(3), Sizing = new FixedSizing() };

    private static ResolvedTarget Target(TargetPlace place, DrillSetting setting)
    {
        var resolution = DrillResolver.Resolve(Plan("t", place), setting);
        Assert.Null(resolution.Problem);
        return resolution.Target!;
    }

    private static string Problem(TargetPlace place, DrillSetting setting)
    {
        var resolution = DrillResolver.Resolve(Plan("t", place), setting);
        Assert.Null(resolution.Target);
        return resolution.Problem!;
    }
}
