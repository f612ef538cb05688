using AimTrainer.Domain;

namespace AimTrainer.Calibration.Tests;

public sealed class TargetShowingTests
{
    /// <summary>2 px a board across and 0.1 px an inch along, without perspective: all numbers can be worked out by hand.</summary>
    private static readonly ProjectorMap Plain = new()
    {
        Picture = new PictureSize(120, 90),
        Homography = new Homography(2 * 39 / 41.5, 0, 10, 0, 0.1, 5, 0, 0, 1),
        Stretch = new LaneStretch(Feet.FromFeet(0), Feet.FromFeet(60), default, default),
    };

    [Fact]
    public void AtTheMiddle_OneBoardOfTwoPixels_TooNarrowWithNumbersAndWhatHelps()
    {
        var showing = TargetShowing.AtTheMiddle(Plain, BoardOffset.FromBoards(1), Feet.FromFeet(45), LaneProfileReader.Default, ShowingSettings.Usual);

        Assert.Equal(ShowingResult.TooNarrow, showing.Result);
        Assert.Equal(2, showing.WidthPixels!.Value, 9);
        Assert.Equal(0.5, showing.PixelBoards!.Value, 9);
        Assert.Equal(1.5, showing.NarrowestBoards!.Value, 9);
        Assert.Equal(
            "a target of 1 board at 45 ft cannot be shown as it is graded: 2.0 pixels wide, needed 3; a pixel there is 0.50 board across and 10.0 in along the lane", showing.Found);
        Assert.Equal(
            [
                "a target of at least 1.5 boards there", "a nearer mount: 0.67 of the way from lens to target, or less", "a longer lens (smaller picture): 1.5 times the throw ratio, or more",
                "a second projector for the lane around 45 ft",
            ],
            showing.WouldHelp);
    }

    [Theory]
    [InlineData(1.5, 3, ShowingResult.Honest)]
    [InlineData(1.4, 3, ShowingResult.TooNarrow)]
    [InlineData(1.4, 2.5, ShowingResult.Honest)]
    public void AtTheMiddle_AroundTheLimit_LimitIsTheSettings(double boards, double pixels, ShowingResult expected) => Assert.Equal(
        expected, TargetShowing.AtTheMiddle(Plain, BoardOffset.FromBoards(boards), Feet.FromFeet(30), LaneProfileReader.Default, new ShowingSettings(pixels)).Result);

    [Theory]
    [InlineData(Hand.Right, 3, ShowingResult.Honest)]
    [InlineData(Hand.Right, 37, ShowingResult.BesidePicture)]
    [InlineData(Hand.Left, 37, ShowingResult.Honest)]
    public void Of_PartOfTheLaneInThePicture_HandSaysWhichPart(Hand hand, double board, ShowingResult expected)
    {
        var half = Plain with { Picture = new PictureSize(50, 90) };
        var target = new Target(Board.FromBoards(board), BoardOffset.FromBoards(3), Feet.FromFeet(30));
        var showing = TargetShowing.Of(half, target, LaneProfileReader.Default, hand, ShowingSettings.Usual);
        Assert.Equal(expected, showing.Result);
        Assert.Equal(expected == ShowingResult.Honest, showing.WouldHelp.Count == 0);
    }

    [Fact]
    public void Of_BeyondTheStretch_SaysSo()
    {
        var near = Plain with { Stretch = Plain.Stretch with { To = Feet.FromFeet(20) } };
        var showing = TargetShowing.AtTheMiddle(near, BoardOffset.FromBoards(3), Feet.FromFeet(45), LaneProfileReader.Default, ShowingSettings.Usual);
        Assert.Equal(ShowingResult.OutsideStretch, showing.Result);
        Assert.Contains("0 to 20 ft", showing.Found, StringComparison.Ordinal);
        Assert.Null(showing.WidthPixels);
    }
}
