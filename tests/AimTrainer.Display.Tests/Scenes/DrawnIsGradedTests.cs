using AimTrainer.Domain;
using CsCheck;

namespace AimTrainer.Display.Tests;

/// <summary>The target that is drawn is the target that is graded: what lies just within its drawn edges is held, what lies just beyond is not.</summary>
public sealed class DrawnIsGradedTests
{
    // A crossing that lies beyond -4 or 44 cannot be read in, so neither can one at the edge of a target that reaches so far.
    private static readonly Gen<NamedTarget> AnyTarget = Gen.Select(Gen.Int[50, 3950], Gen.Int[25, 1000], Gen.Int[0, 600])
        .Select((centre, half, feet) => new NamedTarget(
            "spot", new Target(Board.FromBoards(centre / 100.0), BoardOffset.FromBoards(half / 50.0), Feet.FromFeet(feet / 10.0))))
        .Where(spot => spot.Target.OutsideEdge.Boards > -3.9 && spot.Target.InsideEdge.Boards < 43.9);

    [Theory]
    [InlineData(Hand.Right)]
    [InlineData(Hand.Left)]
    public void Build_AnyTarget_DrawsTheEdgesThatAreGraded(Hand hand) => AnyTarget.Sample(
        target => AssertEdges(hand, new Aim("aim", [target])), iter: 300);

    [Theory]
    [InlineData(Hand.Right)]
    [InlineData(Hand.Left)]
    public void Build_LinesAndWalks_DrawTheEdgesThatAreGraded(Hand hand)
    {
        foreach (var name in new[] { "line", "line-of-three", "next" })
        {
            AssertEdges(hand, SceneStates.All().Single(state => state.Name == name).Snapshot.Shown!);
        }

        var walk = ScenePlay.Begun(hand, ScenePlay.Block(
            ScenePlay.Line(ScenePlay.Target("arrows", 5, 15, 3), ScenePlay.Target("downlane", 7, 40, 5, """, "walkRatio": 0.5""")),
            """ "showsNext": true """,
            """{ "kind": "walk", "to": { "board": 35 }, "moveBoards": 2, "everyShots": 1 }"""));
        while (walk.Snapshot.Shown is { } shown)
        {
            AssertEdges(hand, shown);
            walk.Throw(1.0);
        }
    }

    [Fact]
    public void Build_SameSessionOfEitherHand_IsMirrored()
    {
        var (right, left) = (Rims(Hand.Right, Aims("line-of-three")), Rims(Hand.Left, Aims("line-of-three")));
        Assert.Equal(3, right.Count);
        foreach (var (one, other) in right.Zip(left))
        {
            Assert.Equal(41.5 - one.High, other.Low, 9);
            Assert.Equal(41.5 - one.Low, other.High, 9);
        }
    }

    [Fact]
    public void Build_Target_LiesAsFarBeforeItsDistanceAsBeyond()
    {
        var scene = ProjectorScene.Build(SceneStates.All().Single(state => state.Name == "target").Projector);
        var rim = scene.Shapes.OfType<Shape<LanePoint>.Polygon>().First();
        Assert.Equal(30, rim.Corners.Min(corner => corner.Down.Value) + rim.Corners.Max(corner => corner.Down.Value), 9);
    }

    private static Aim Aims(string name) => SceneStates.All().Single(state => state.Name == name).Snapshot.Shown!;

    private static void AssertEdges(Hand hand, Aim aim)
    {
        var lane = LaneProfileReader.Default;
        var rims = Rims(hand, aim);
        Assert.Equal(aim.Targets.Count, rims.Count);
        for (var i = 0; i < rims.Count; i++)
        {
            // A hair is two hundredths of a board: crossings are measured to one.
            var hair = 0.02 * lane.BoardWidth.Value;
            Assert.True(IsHeld(rims[i].Low + hair), "within the low edge");
            Assert.True(IsHeld(rims[i].High - hair), "within the high edge");
            Assert.False(IsHeld(rims[i].Low - hair), "beyond the low edge");
            Assert.False(IsHeld(rims[i].High + hair), "beyond the high edge");

            bool IsHeld(double across)
            {
                var target = aim.Targets[i];
                var board = lane.BoardOf(new LanePoint(Inches.FromInches(across), target.Target.Distance), hand);
                var reading = new ShotReading();
                reading.AddCrossing(target.Target.Distance.Value, board.Boards);
                return Grader.Grade(reading.Check(out _)!, target, GradeBands.Default).Grade!.Holds;
            }
        }
    }

    /// <summary>How far each current target reaches across the lane as drawn: the first of the three shapes of one is its whole outline.</summary>
    private static List<(double Low, double High)> Rims(Hand hand, Aim aim)
    {
        var start = SceneStates.All().Single(state => state.Name == "target").Snapshot;
        var scene = ProjectorScene.Build(new ProjectorSceneInput { Snapshot = start with { Setup = start.Setup! with { Hand = hand }, Shown = aim } });
        var palette = ThemeLibrary.Default.Lane;
        var drawn = scene.Shapes.OfType<Shape<LanePoint>.Polygon>().Where(polygon => polygon.Colour == palette.Rim || polygon.Colour == palette.Target).ToList();
        Assert.Equal(3 * aim.Targets.Count, drawn.Count);
        Assert.All(drawn.Chunk(3), three =>
        {
            var (low, high) = Reach(three[0]);
            Assert.All(three, part => Assert.InRange(Reach(part).Low, low - 1e-9, high));
            Assert.All(three, part => Assert.InRange(Reach(part).High, low, high + 1e-9));
        });
        return [.. drawn.Chunk(3).Select(three => Reach(three[0]))];
    }

    private static (double Low, double High) Reach(Shape<LanePoint>.Polygon polygon) =>
        (polygon.Corners.Min(corner => corner.Across.Value), polygon.Corners.Max(corner => corner.Across.Value));
}
