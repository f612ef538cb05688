using AimTrainer.Domain;
using CsCheck;

namespace AimTrainer.Display.Tests;

/// <summary>Whether the screen can be read from 20 m: sizes, room, nothing over anything else.</summary>
public sealed class OverheadReadingTests
{
    public static TheoryData<string, double> States()
    {
        var data = new TheoryData<string, double>();
        foreach (var state in SceneStates.All())
        {
            foreach (var aspect in new[] { 16.0 / 9, 4.0 / 3, 1.25, 21.0 / 9 })
            {
                data.Add(state.Name, aspect);
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(States))]
    public void Build_State_WritingStaysInThePictureLargeEnoughAndApart(string name, double aspect)
    {
        var scene = Scene(name, aspect);
        var writings = scene.Shapes.OfType<Shape<ScreenPoint>.Writing>().ToList();
        Assert.NotEmpty(writings);
        Assert.All(writings, writing => Assert.InRange(writing.Size, 1 / 20.0, 1));
        Assert.All(writings, writing => Assert.False(string.IsNullOrWhiteSpace(writing.Text)));
        var boxes = WritingBox.Of(scene);
        Assert.All(boxes, box =>
        {
            Assert.InRange(box.Left, 0.01, aspect);
            Assert.InRange(box.Right, 0, aspect - 0.01);
            Assert.InRange(box.Top, 0.01, 1);
            Assert.InRange(box.Bottom, 0, 0.99);
        });
        WritingBox.AssertApart(boxes);
    }

    [Theory]
    [MemberData(nameof(States))]
    public void Build_State_ShapesStayInThePicture(string name, double aspect)
    {
        foreach (var shape in Scene(name, aspect).Shapes)
        {
            IEnumerable<ScreenPoint> points = shape switch
            {
                Shape<ScreenPoint>.Polygon polygon => polygon.Corners,
                Shape<ScreenPoint>.Stroke stroke => stroke.Points,
                Shape<ScreenPoint>.Ellipse ellipse =>
                [
                    new(ellipse.Centre.X - ellipse.RadiusAcross, ellipse.Centre.Y - ellipse.RadiusAlong),
                    new(ellipse.Centre.X + ellipse.RadiusAcross, ellipse.Centre.Y + ellipse.RadiusAlong),
                ],
                _ => [],
            };
            Assert.All(points, point => Assert.True(point.X >= 0 && point.X <= aspect && point.Y is >= 0 and <= 1, $"{shape}"));
        }
    }

    [Theory]
    [InlineData("target", "Board 10")]
    [InlineData("line", "15 to 8")]
    [InlineData("hit", "0.40")]
    [InlineData("miss-wide", "12.35")]
    [InlineData("ten-shots", "70 %")]
    [InlineData("paused", "Paused")]
    [InlineData("idle", "Lane 7")]
    public void Build_MainFigure_IsAnEighthOfThePicture(string name, string figure) =>
        Assert.InRange(Scene(name, 16.0 / 9).Shapes.OfType<Shape<ScreenPoint>.Writing>().Single(writing => writing.Text == figure).Size, 1 / 8.0, 1);

    [Fact]
    public void Build_AnyTargets_WritingStaysApart()
    {
        // Every board, width and distance that a target may have; lines of up to four.
        var start = SceneStates.All().Single(state => state.Name == "target").Snapshot;
        Gen.Select(Gen.Int[50, 3950].Array[1, 4], Gen.Int[50, 2000], Gen.Int[0, 56], Gen.Bool).Sample(
            (boards, width, feet, wide) =>
            {
                var targets = boards.AsEnumerable().Select((board, i) => new NamedTarget(
                    $"t{i}", new Target(Board.FromBoards(board / 100.0), BoardOffset.FromBoards(width / 100.0), Feet.FromFeet(feet + i)))).ToValueList();
                var input = new OverheadSceneInput { Snapshot = start with { Shown = new Aim("aim", targets) }, Aspect = wide ? 16.0 / 9 : 4.0 / 3 };
                WritingBox.AssertApart(WritingBox.Of(OverheadScene.Build(input)));
            },
            iter: 200);
    }

    [Fact]
    public void Aspect_OutOfRange_Throws() => Assert.Throws<ArgumentOutOfRangeException>(
        () => new OverheadSceneInput { Snapshot = Sessions.SessionSnapshot.Idle(1), Aspect = 1 });

    private static Scene<ScreenPoint> Scene(string name, double aspect) =>
        OverheadScene.Build(SceneStates.All().Single(state => state.Name == name).Overhead with { Aspect = aspect });
}
