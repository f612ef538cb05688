using AimTrainer.Domain;
using CsCheck;

namespace AimTrainer.Display.Tests;

/// <summary>Whether words on the lane can be read, and stay clear of the lane's edges, of each other and of the target.</summary>
public sealed class LaneReadingTests
{
    public static TheoryData<string> States() => new(SceneStates.All().Select(state => state.Name));

    [Theory]
    [MemberData(nameof(States))]
    public void Build_State_WordsStayOnTheLaneAndApart(string name)
    {
        var state = SceneStates.All().Single(each => each.Name == name);
        var lane = state.Snapshot.Setup?.Lane ?? LaneProfileReader.Default;
        var boxes = ProjectorScene.Build(state.Projector).Shapes.OfType<Shape<LanePoint>.Writing>().Select(WritingBox.Of).ToList();
        Assert.All(boxes, box =>
        {
            Assert.InRange(box.Left, -lane.Width.Value, 0);
            Assert.InRange(box.Right, -lane.Width.Value, 0);
            Assert.InRange(box.Top, -62, 0);
            Assert.InRange(box.Bottom, -62, 0);
        });
        WritingBox.AssertApart([.. boxes, .. state.Snapshot.Phase == SessionPhase.Throwing ? Targets(state, lane) : []]);
    }

    [Theory]
    [MemberData(nameof(States))]
    public void Build_State_WordsAreSeenLargerThanTheSmallestReadableLetter(string name)
    {
        // Source: Snellen's chart: the letter that a usual eye can just read is 5 minutes of arc high; 20/20 vision in any textbook of optics.
        foreach (var writing in ProjectorScene.Build(SceneStates.All().Single(each => each.Name == name).Projector).Shapes.OfType<Shape<LanePoint>.Writing>())
        {
            foreach (var behind in new[] { BowlerView.Nearest, BowlerView.Farthest })
            {
                var view = new BowlerView(Feet.FromFeet(5.5), Feet.FromFeet(behind));
                var far = Feet.FromFeet(writing.Anchor.Down.Value + (writing.Size * writing.Stretch / 12));
                Assert.InRange(view.SeenHeight(writing.Anchor.Down, far).Value, 2 * 5 / 60.0, 2);
            }
        }
    }

    [Fact]
    public void Build_AnyShotAtAnyTargets_WordsStayOnTheLaneAndApart()
    {
        string[] feedback =
        [
            """{ "when": "every" }""", """{ "when": "every", "says": "side" }""", """{ "when": "every", "says": "hit" }""", """{ "when": "outside" }""", """{ "when": "none" }""",
        ];
        Gen.Select(Gen.Int[2, 38].Array[1, 4], Gen.Int[1, 20], Gen.Int[1, 40], Gen.Int[1, 9], Gen.Int[-300, 300].Array[4], Gen.Int[0, feedback.Length - 1], Gen.Bool).Sample(
            (boards, width, feet, apart, misses, told, left) =>
            {
                var targets = boards.Select((board, i) => ScenePlay.Target($"t{i}", board, Math.Min(56, feet) + (i * Math.Min(apart, 6) * 0.75), width)).ToArray();
                var block = ScenePlay.Block(
                    targets.Length == 1 ? targets[0] : ScenePlay.Line(targets),
                    $$""" "feedback": {{feedback[told]}}, "until": { "shots": 20 } """);
                var play = ScenePlay.Begun(left ? Hand.Left : Hand.Right, block).ThrowAt(true, [.. misses.Select(miss => (double?)(miss / 100.0))]);
                var scene = ProjectorScene.Build(new SceneState("", play.Snapshot).Projector);
                var boxes = scene.Shapes.OfType<Shape<LanePoint>.Writing>().Select(WritingBox.Of).ToList();
                Assert.All(boxes, box => Assert.True(box.Left >= -41.5 && box.Right <= 0 && box.Top >= -62 && box.Bottom <= 0, $"{box}"));
                WritingBox.AssertApart(boxes);
            },
            iter: 300);
    }

    private static IEnumerable<WritingBox> Targets(SceneState state, LaneProfile lane) => state.Snapshot.Shown!.Targets.Select(shown =>
    {
        var (near, far) = TargetLength.SpanOf(shown.Target, lane, BowlerView.Default);
        double[] across =
        [
            -lane.PointOf(shown.Target.OutsideEdge, near, state.Snapshot.Setup!.Hand).Across.Value,
            -lane.PointOf(shown.Target.InsideEdge, near, state.Snapshot.Setup.Hand).Across.Value,
        ];
        return new WritingBox("target", across.Min(), -far.Value, across.Max(), -near.Value);
    });
}
