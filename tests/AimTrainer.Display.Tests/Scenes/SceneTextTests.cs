using AimTrainer.Domain;

namespace AimTrainer.Display.Tests;

/// <summary>Scenes as text, and the words on them.</summary>
public sealed class SceneTextTests
{
    [Fact]
    public void Write_EveryShape_ReadsAsSaid()
    {
        var scene = new Scene<ScreenPoint>(
            new Colour(1, 2, 255),
            [
                new Shape<ScreenPoint>.Polygon([new(0, 0), new(1.23456, 0), new(-0.0001, 1)], new Colour(16, 32, 48)),
                new Shape<ScreenPoint>.Stroke([new(0, 0), new(1, 1)], 0.5, new Colour(0, 0, 0, 128), Closed: true),
                new Shape<ScreenPoint>.Ellipse(new(0.5, 0.5), 0.25, 0.125, new Colour(0, 0, 0), 0.1),
                new Shape<ScreenPoint>.Writing("Board 10", new(0.1, 0.2), 0.125, TextAlign.Middle, new Colour(0, 0, 0), Bold: true, Stretch: 2.5),
            ]);
        Assert.Equal(
            """
            ground #0102ff
            polygon (0, 0) (1.235, 0) (0, 1) #102030
            stroke 0.5 closed (0, 0) (1, 1) #00000080
            ellipse (0.5, 0.5) 0.25 x 0.125 ring 0.1 #000000
            writing "Board 10" (0.1, 0.2) middle 0.125 bold stretch 2.5 #000000

            """.ReplaceLineEndings("\n"),
            SceneText.Write(scene));
    }

    [Fact]
    public void Write_LaneScene_ReadsInchesAndFeet()
    {
        var scene = new Scene<LanePoint>(default, [new Shape<LanePoint>.Ellipse(new LanePoint(Inches.FromInches(20.75), Feet.FromFeet(15)), 1, 6, default)]);
        Assert.Contains("ellipse (20.75, 15) 1 x 6 #00000000", SceneText.Write(scene), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a", false, 0.85)]
    [InlineData("aa", true, 1.86)]
    [InlineData("", false, 0)]
    [InlineData("語", false, 1.92)]
    [InlineData("😀", true, 1.92)]
    public void Width_KnownText_IsTheSumOfItsLetters(string text, bool bold, double width) => Assert.Equal(2 * width, TextRuler.Width(text, 2, bold), 12);

    [Theory]
    [InlineData("short", 10, "short")]
    [InlineData("two\twords", 10, "two words")]
    [InlineData("far too long a name", 6, "far too...")]
    public void Cut_Text_Fits(string text, double room, string expected)
    {
        var cut = TextFit.Cut(text, room, 1, false);
        Assert.Equal(expected, cut);
        Assert.InRange(TextRuler.Width(cut, 1, false), 0, room);
    }

    [Fact]
    public void Lines_LongText_BreaksAtBlanksAndLosesNoWord()
    {
        const string Text = "Nobody walks past the foul line: the lane is oiled and slippery.";
        var lines = TextFit.Lines(Text, 12, 1, false);
        Assert.All(lines, line => Assert.InRange(TextRuler.Width(line, 1, false), 1, 12));
        Assert.Equal(Text, string.Join(' ', lines));
        Assert.InRange(lines.Count, 4, 6);
    }

    [Fact]
    public void First_NoneFits_CutsTheLast() => Assert.Equal("sh...", TextFit.First(3.2, 1, false, "a long way", "shorter way"));

    [Theory]
    [InlineData("miss-inside", "left")]
    [InlineData("miss-outside", "right")]
    [InlineData("miss-inside-left-hand", "right")]
    [InlineData("miss-outside-left-hand", "left")]
    public void Build_Miss_SaysTheSideAsTheBowlerSeesIt(string name, string side)
    {
        var state = SceneStates.All().Single(each => each.Name == name);
        Assert.Contains($"boards {side}, a miss", SceneText.Write(OverheadScene.Build(state.Overhead)), StringComparison.Ordinal);
        Assert.Contains($"\"2.35 {side}\"", SceneText.Write(ProjectorScene.Build(state.Projector)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("withheld-summary", "until 3 shots are in")]
    [InlineData("withheld-none", "until your coach tells")]
    [InlineData("withheld-fading", "until a later shot is told")]
    public void Build_Withheld_SaysUntilWhen(string name, string words)
    {
        var state = SceneStates.All().Single(each => each.Name == name);
        Assert.Contains(words, SceneText.Write(ProjectorScene.Build(state.Projector)), StringComparison.Ordinal);
        var screen = OverheadScene.Build(state.Overhead with { Aspect = 32.0 / 9 });
        Assert.Contains($"result withheld {words}", SceneText.Write(screen), StringComparison.Ordinal);
    }

    [Fact]
    public void Build_Caution_AsksHowTheArmFeelsAndKeepsPeopleBehindTheFoulLine()
    {
        var state = SceneStates.All().Single(each => each.Name == "caution-long");
        var screen = string.Join(' ', OverheadScene.Build(state.Overhead).Shapes.OfType<Shape<ScreenPoint>.Writing>().Select(writing => writing.Text));
        Assert.Contains("past the foul line", screen, StringComparison.Ordinal);
        Assert.Contains("beam", screen, StringComparison.Ordinal);
        Assert.Contains("How do hand, wrist and arm feel?", screen, StringComparison.Ordinal);
        Assert.Contains("and 3 more: ask your coach", screen, StringComparison.Ordinal);
        var lane = SceneText.Write(ProjectorScene.Build(state.Projector));
        Assert.Contains("behind the foul line", lane, StringComparison.Ordinal);
        Assert.Contains("beam", lane, StringComparison.Ordinal);
        Assert.Contains("sore", lane, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("idle")]
    [InlineData("caution")]
    [InlineData("paused")]
    [InlineData("session-end-withheld")]
    public void Build_NothingToThrowAt_DrawsNoTarget(string name)
    {
        var state = SceneStates.All().Single(each => each.Name == name);
        Assert.DoesNotContain(ProjectorScene.Build(state.Projector).Shapes, shape => shape.Colour == ThemeLibrary.Default.Lane.Target);
    }

    [Fact]
    public void Build_NextNotAllowedByTheBlock_IsNotDrawn()
    {
        var state = SceneStates.All().Single(each => each.Name == "next");
        Assert.Contains(ProjectorScene.Build(state.Projector).Shapes, shape => shape.Colour == ThemeLibrary.Default.Lane.Next);
        var hidden = state.Snapshot with { Block = state.Snapshot.Block! with { ShowsNext = false } };
        Assert.DoesNotContain(ProjectorScene.Build(state.Projector with { Snapshot = hidden }).Shapes, shape => shape.Colour == ThemeLibrary.Default.Lane.Next);
        Assert.DoesNotContain(OverheadScene.Build(state.Overhead with { Snapshot = hidden }).Shapes, shape => shape.Colour == ThemeLibrary.Default.Screen.Next);
    }

    [Theory]
    [InlineData(0.9)]
    [InlineData(4.1)]
    public void Notice_AspectOutOfRange_Throws(double aspect) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => NoticeScene.Uncalibrated(aspect, ThemeLibrary.Default));

    [Theory]
    [InlineData(1.0)]
    [InlineData(4.0 / 3)]
    [InlineData(16.0 / 9)]
    [InlineData(4.0)]
    public void Notice_AnyAspect_StaysInThePicture(double aspect)
    {
        var why = string.Concat(Enumerable.Repeat("The map was made for another monitor and is not used. ", 3));
        var boxes = WritingBox.Of(NoticeScene.Uncalibrated(aspect, ThemeLibrary.Default, why));
        Assert.InRange(boxes.Count, 3, 12);
        Assert.All(boxes, box => Assert.True(box.Left > 0 && box.Right < aspect && box.Top > 0 && box.Bottom < 1, $"{box}"));
        WritingBox.AssertApart(boxes);
    }
}
