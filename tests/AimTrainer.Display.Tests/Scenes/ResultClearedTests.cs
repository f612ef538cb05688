using AimTrainer.Domain;

namespace AimTrainer.Display.Tests;

/// <summary>When the result of a shot leaves the lane: by time, by the coach, by the next shot.</summary>
public sealed class ResultClearedTests
{
    private static readonly string BeforeAnyShot = SceneText.Write(ProjectorScene.Build(State("target")));

    [Theory]
    [InlineData(0, true)]
    [InlineData(11.9, true)]
    [InlineData(12, false)]
    [InlineData(1000, false)]
    public void Build_SomeTimeAfterTheShot_ShowsTheResultUntilItsTimeIsUp(double seconds, bool shown) =>
        Assert.Equal(shown, IsShown(State("hit") with { SinceShot = TimeSpan.FromSeconds(seconds) }));

    [Fact]
    public void Build_TimeNotKnown_ShowsNoResult() => Assert.False(IsShown(State("hit") with { SinceShot = null }));

    [Fact]
    public void Build_ClearedByTheCoach_ShowsNoResult() => Assert.False(IsShown(State("hit") with { Cleared = true }));

    [Fact]
    public void Build_NextShotWithheld_ShowsNothingOfTheOneBefore()
    {
        var scene = ProjectorScene.Build(State("withheld-fading"));
        Assert.DoesNotContain(scene.Shapes, shape => shape.Colour == ThemeLibrary.Default.Lane.Hit || shape.Colour == ThemeLibrary.Default.Lane.Miss);
    }

    [Fact]
    public void Build_TrailOff_DrawsNone()
    {
        var without = ProjectorScene.Build(State("hit") with { ShowsTrail = false });
        Assert.DoesNotContain(without.Shapes, shape => shape is Shape<LanePoint>.Stroke);
        Assert.Contains(ProjectorScene.Build(State("hit")).Shapes, shape => shape is Shape<LanePoint>.Stroke);
    }

    [Fact]
    public void Build_OverheadWithLimit_ShowsTheResultUntilItsTimeIsUp()
    {
        var input = SceneStates.All().Single(state => state.Name == "hit").Overhead with { ResultFor = TimeSpan.FromSeconds(5) };
        Assert.Contains("\"0.40\"", SceneText.Write(OverheadScene.Build(input)), StringComparison.Ordinal);
        Assert.DoesNotContain("\"0.40\"", SceneText.Write(OverheadScene.Build(input with { SinceShot = TimeSpan.FromSeconds(6) })), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("hit", true)]
    [InlineData("miss-inside", false)]
    [InlineData("says-hit-held", true)]
    [InlineData("says-hit", false)]
    public void Build_HitAndMiss_DifferByShape(string name, bool disc)
    {
        var palette = ThemeLibrary.Default.Lane;
        var marks = ProjectorScene.Build(State(name)).Shapes.Where(shape => shape.Colour == palette.Hit || shape.Colour == palette.Miss).ToList();
        Assert.Equal(disc ? 1 : 4, marks.Count);
        Assert.All(marks, mark => Assert.Equal(disc, mark is Shape<LanePoint>.Ellipse { RingWidth: 0 }));
    }

    [Theory]
    [InlineData("miss-inside", 12.35)]
    [InlineData("hit", 10.4)]
    public void Build_CrossingTold_IsMarkedWhereItWas(string name, double board)
    {
        var lane = LaneProfileReader.Default;
        var tick = ProjectorScene.Build(State(name)).Shapes.OfType<Shape<LanePoint>.Polygon>().Single(polygon => polygon.Colour == ThemeLibrary.Default.Lane.Text);
        Assert.Equal((board - 0.5) * lane.BoardWidth.Value, tick.Corners.Average(corner => corner.Across.Value), 9);
    }

    [Fact]
    public void WithoutWays_ClearedBeforeTheLastShot_LeavesItsWayAlone()
    {
        var both = SceneStates.All().Single(state => state.Name == "compare-both").Snapshot;

        Assert.Same(both, BallLook.WithoutWays(both, 0));
        Assert.Equal([2], BallLook.WithoutWays(both, 1).LastOfEach.Select(shot => shot.Number));
        Assert.Empty(BallLook.WithoutWays(both, 2).LastOfEach);
    }

    [Fact]
    public void Build_BothWays_DifferByShapeAndByLineAndByColour()
    {
        var palette = ThemeLibrary.Default.Lane;
        var scene = ProjectorScene.Build(State("compare-both") with { SinceShot = TimeSpan.FromMinutes(5) });

        // Four places each: laydown, arrows, breakpoint, pins. The reference ball's signs are discs on three whole pieces of line.
        Assert.Equal(4, scene.Shapes.OfType<Shape<LanePoint>.Ellipse>().Count(disc => disc.Colour == palette.Trail));
        Assert.Equal(3, scene.Shapes.OfType<Shape<LanePoint>.Stroke>().Count(line => line.Colour with { Alpha = 255 } == palette.Trail));
        Assert.Equal(4, scene.Shapes.OfType<Shape<LanePoint>.Polygon>().Count(square => square.Colour == palette.Next && square.Corners.Count == 4));
        Assert.InRange(scene.Shapes.OfType<Shape<LanePoint>.Stroke>().Count(dash => dash.Colour with { Alpha = 255 } == palette.Next), 15, 40);
        Assert.DoesNotContain(ProjectorScene.Build(State("compare-cleared")).Shapes, shape => shape.Colour with { Alpha = 255 } == palette.Trail);
    }

    private static bool IsShown(ProjectorSceneInput input) => SceneText.Write(ProjectorScene.Build(input)) != BeforeAnyShot;

    private static ProjectorSceneInput State(string name) => SceneStates.All().Single(state => state.Name == name).Projector;
}
