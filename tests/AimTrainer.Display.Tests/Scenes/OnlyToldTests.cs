namespace AimTrainer.Display.Tests;

/// <summary>
/// What is withheld cannot be read from any display: sessions that differ only in what was not told give the very same pictures.
/// </summary>
public sealed class OnlyToldTests
{
    [Theory]
    [InlineData("""{ "when": "none" }""")]
    [InlineData("""{ "when": "summary", "everyShots": 7 }""")]
    [InlineData("""{ "when": "fading", "firstShare": 0.1, "lastShare": 0 }""")]
    public void Build_NothingTold_PicturesDoNotHangOnTheShots(string feedback) => AssertSame(feedback, [0.4, 2.0, -3.1], [5.0, -0.2, 0.0]);

    [Fact]
    public void Build_ToldHitOnly_PicturesDoNotHangOnSideOrSize() =>
        AssertSame("""{ "when": "every", "says": "hit" }""", [0.4, 2.0, -3.1], [-1.1, -5.2, 2.0]);

    [Fact]
    public void Build_ToldSide_PicturesDoNotHangOnSize() =>
        AssertSame("""{ "when": "every", "says": "side" }""", [0.4, 2.0, -3.1], [1.1, 5.2, -2.0]);

    [Fact]
    public void Build_ToldOutside_PicturesDoNotHangOnWhereItHeld() =>
        AssertSame("""{ "when": "outside" }""", [2.0, 0.4], [3.0, -1.2]);

    [Fact]
    public void Build_ToldOutside_EarlierMissesAreNotShownAgain() =>
        AssertSame("""{ "when": "outside" }""", [2.0, -3.0], [5.0, -3.0]);

    [Fact]
    public void Build_SummaryTold_PicturesHangOnlyOnTheShotThatIsShown() =>
        AssertSame("""{ "when": "summary", "everyShots": 2 }""", [2.0, 0.5], [-3.0, 0.5]);

    [Fact]
    public void Build_BlockWithoutFeedbackIsOver_PicturesDoNotHangOnItsShots()
    {
        Assert.Equal(OfTwoBlocks(0.4, 2.0), OfTwoBlocks(-3.0, 0.1));
        Assert.Equal(OfOneBlock(0.4, 2.0), OfOneBlock(-3.0, 0.1));
    }

    [Fact]
    public void Build_ComparisonWithoutFeedback_PicturesDoNotHangOnTheShots() =>
        Assert.Equal(OfComparison(""", "feedback": { "when": "none" }""", 0.5, -1.0), OfComparison(""", "feedback": { "when": "none" }""", -3.0, null));

    [Fact]
    public void Build_ComparisonToldTheSideOnly_WaysAreNotDrawn() => Assert.Equal(
        OfComparison(""", "feedback": { "when": "every", "says": "side" }""", 0.5, -1.0), OfComparison(""", "feedback": { "when": "every", "says": "side" }""", 1.0, -2.0));

    [Fact]
    public void Build_EveryShotTold_PicturesHangOnTheShots()
    {
        Assert.NotEqual(OfComparison("", 0.5, -1.0), OfComparison("", 0.5, -1.1));

        // The counterpart: were the pictures always the same, the tests above could not fail.
        Assert.NotEqual(Of("""{ "when": "every" }""", [0.4]), Of("""{ "when": "every" }""", [0.5]));
        Assert.NotEqual(Of("""{ "when": "outside" }""", [2.0]), Of("""{ "when": "outside" }""", [2.1]));
        Assert.NotEqual(Of("""{ "when": "every", "says": "side" }""", [0.4]), Of("""{ "when": "every", "says": "side" }""", [-0.4]));
        Assert.NotEqual(Of("""{ "when": "every", "says": "hit" }""", [0.4]), Of("""{ "when": "every", "says": "hit" }""", [2.4]));
    }

    private static void AssertSame(string feedback, double[] one, double[] other) => Assert.Equal(Of(feedback, one), Of(feedback, other));

    private static string Of(string feedback, double[] misses) => Pictures(ScenePlay.Begun(Block($$""" "feedback": {{feedback}}, "until": { "shots": 20 } """)).Throw(misses));

    private static string OfTwoBlocks(params double[] misses) => Pictures(ScenePlay.Begun(
        Block(""" "feedback": { "when": "none" }, "until": { "shots": 2 } """), Block(""" "until": { "shots": 2 } """, "second")).Throw(misses));

    private static string OfOneBlock(params double[] misses) => Pictures(ScenePlay.Begun(Block(""" "feedback": { "when": "none" }, "until": { "shots": 2 } """)).Throw(misses));

    private static string OfComparison(string feedback, params double?[] misses) => Pictures(SceneStates.Compared(feedback: feedback).ThrowAt(true, misses));

    private static string Block(string rest, string name = "first") => ScenePlay.Block(ScenePlay.Target("spot", 10, 15, 3), rest, name: name);

    private static string Pictures(ScenePlay play)
    {
        var state = new SceneState("", play.Snapshot);
        return SceneText.Write(ProjectorScene.Build(state.Projector)) + SceneText.Write(OverheadScene.Build(state.Overhead));
    }
}
