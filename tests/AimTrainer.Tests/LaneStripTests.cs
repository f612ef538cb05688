using AimTrainer.Domain;
using AimTrainer.Output;

namespace AimTrainer.Tests;

public sealed class LaneStripTests
{
    [Theory]
    // Boards 1 at the right edge for a right-hander; + on every fifth.
    [InlineData(10, 3, null, false, Hand.Right, "|....+....+....+....+....+...===...+....|")]
    [InlineData(10, 3, null, false, Hand.Left, "|....+...===...+....+....+....+....+....|")]
    [InlineData(10, 0.5, null, false, Hand.Left, "|....+....=....+....+....+....+....+....|")]
    [InlineData(10.5, 0.5, null, false, Hand.Left, "|....+....=....+....+....+....+....+....|")]
    [InlineData(1, 9, 1.0, true, Hand.Left, "|O====....+....+....+....+....+....+....|")]
    [InlineData(39, 3, 44.0, false, Hand.Left, "|....+....+....+....+....+....+....+..=x|")]
    // Held at 11.7 of 8.25 to 11.75: the mark lies on what is painted.
    [InlineData(10, 3.5, 11.7, true, Hand.Left, "|....+...==O...+....+....+....+....+....|")]
    [InlineData(10, 3.5, 11.8, false, Hand.Left, "|....+...===x..+....+....+....+....+....|")]
    public void Draw_TargetAndCrossing_AsWorkedByHand(double centre, double width, double? crossing, bool held, Hand hand, string expected)
    {
        var target = new Target(Board.FromBoards(centre), BoardOffset.FromBoards(width), Feet.FromFeet(15));

        Assert.Equal(expected, LaneStrip.Draw(target, crossing is { } board ? Board.FromBoards(board) : null, held, hand));
    }
}
