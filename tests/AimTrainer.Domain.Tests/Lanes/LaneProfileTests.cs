using CsCheck;

namespace AimTrainer.Domain.Tests;

public sealed class LaneProfileTests
{
    private const double CentimetresPerInch = 2.54;

    private static readonly Gen<LaneProfile> AnyLane =
        Gen.Double[41, 42].Select(inches => SampleLane.Usual with { Width = Inches.FromInches(inches) });

    private static readonly Gen<Board> AnyBoard = Gen.Int[-40_000, 440_000].Select(count => Board.FromBoards(count / 10_000.0));

    [Fact]
    public void BoardWidth_UsualLane_IsOneThirtyNinth()
    {
        // Source: longlivebowling.com/equipment-specifications, lane width 41.5 in; USBC Level I presentation, 39 boards; 41.5 / 39.
        Assert.Equal(1.064103, SampleLane.Usual.BoardWidth.Value, 6);
        Assert.Equal(27.0282, SampleLane.Usual.BoardWidth.Value * CentimetresPerInch * 10, 4);
    }

    [Theory]
    // Source: 41.5 in and 39 boards as above; (board - 0.5) x 41.5 / 39, derived.
    [InlineData(20, 20.750)]
    [InlineData(5, 4.7885)]
    [InlineData(17.5, 18.0897)]
    [InlineData(39, 40.968)]
    [InlineData(0.5, 0)]
    [InlineData(39.5, 41.5)]
    public void PointOf_RightHand_IsInchesFromTheRightEdge(double board, double inches)
    {
        var point = SampleLane.Usual.PointOf(Board.FromBoards(board), Feet.FromFeet(15), Hand.Right);
        Assert.Equal(inches, point.Across.Value, 0.0005);
        Assert.Equal(Feet.FromFeet(15), point.Down);
    }

    [Theory]
    // Source: pins 12 in apart centre to centre (longlivebowling.com); 10-pin 2 3/4 in from the lane's edge
    // (bowlingball.com/bowlversity/bowling-pins); boards derived: 20, 14.361, 8.723, 3.084 for the 1, 3, 6 and 10 pin.
    [InlineData(20.75, 20)]
    [InlineData(14.75, 14.361)]
    [InlineData(8.75, 8.723)]
    [InlineData(2.75, 3.084)]
    public void BoardOf_PinsOfTheRightSide_AreOnTheirBoards(double inchesFromRight, double board)
    {
        var pin = new LanePoint(Inches.FromInches(inchesFromRight), LaneProfile.HeadPin);
        Assert.Equal(board, SampleLane.Usual.BoardOf(pin, Hand.Right).Boards, 0.0005);
        Assert.Equal(40 - board, SampleLane.Usual.BoardOf(pin, Hand.Left).Boards, 0.0005);
    }

    [Fact]
    public void HeadPin_FromTheFoulLine_IsSixtyFeet()
    {
        // Source: "Accurate bowling lane measurements" (bowlingastrike.com) quoting the American Bowling Congress: 60 ft to the
        // centre of the head-pin spot, 62 ft 10 3/16 in to the pit, which lies 2 ft 10 3/16 in beyond that spot.
        var foulLineToPitInches = (62 * 12) + 10 + (3 / 16.0);
        var headPinToPitInches = (2 * 12) + 10 + (3 / 16.0);
        Assert.Equal(foulLineToPitInches, (LaneProfile.HeadPin.Value * 12) + headPinToPitInches);
    }

    [Fact]
    public void InchesOf_PocketOffset_AgreesWithTheResearch()
    {
        // Source: pocket board 17.5 (USBC research, bowlingchecklists.blogspot.com 2014/07); offset of 6 cm (Physics 18, 96, 2025).
        Assert.Equal(2.6603, SampleLane.Usual.InchesOf(Board.LaneCentre - Board.FromBoards(17.5)).Value, 4);
        Assert.Equal(6.757, SampleLane.Usual.InchesOf(BoardOffset.FromBoards(2.5)).Value * CentimetresPerInch, 3);
        var sixCentimetres = SampleLane.Usual.BoardsOf(Inches.FromInches(6 / CentimetresPerInch));
        Assert.Equal(2.2199, sixCentimetres.Boards, 4);
        Assert.Equal(17.780, (Board.LaneCentre - sixCentimetres).Boards, 3);
    }

    [Theory]
    // Source: paper test at the arrows, US Bowler July 2012 (content.yudu.com/A1xc7b/USB0712), which takes an inch for a board;
    // exact with 41.5 in and 39 boards, derived.
    [InlineData(1.4096, 1.5)]
    [InlineData(3.7590, 4)]
    [InlineData(2, 2.128)]
    [InlineData(4.5, 4.788)]
    public void BoardsOf_SpreadsOfThePaperTest_AreNotInches(double boards, double inches)
    {
        Assert.Equal(boards, SampleLane.Usual.BoardsOf(Inches.FromInches(inches)).Boards, 0.0005);
        Assert.Equal(inches, SampleLane.Usual.InchesOf(BoardOffset.FromBoards(boards)).Value, 0.0005);
    }

    [Theory]
    [InlineData(41)]
    [InlineData(42)]
    public void Width_AtTheLimits_IsTaken(double inches) =>
        Assert.Equal(inches, (SampleLane.Usual with { Width = Inches.FromInches(inches) }).Width.Value);

    [Theory]
    [InlineData(40.99)]
    [InlineData(42.01)]
    public void Width_OutsideTheRules_Throws(double inches) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SampleLane.Usual with { Width = Inches.FromInches(inches) });

    [Theory]
    [InlineData(0.99, 20)]
    [InlineData(60.01, 20)]
    [InlineData(15, -0.01)]
    [InlineData(15, 60.01)]
    public void Distances_OffTheLane_Throw(double arrows, double straight) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            SampleLane.Usual with { ArrowsDistance = Feet.FromFeet(arrows), StraightDistance = Feet.FromFeet(straight) });

    [Fact]
    public void BoardOf_PointOfABoard_IsThatBoard() =>
        Gen.Select(AnyLane, AnyBoard, Gen.Enum<Hand>()).Sample((lane, board, hand) =>
            lane.BoardOf(lane.PointOf(board, Feet.FromFeet(40), hand), hand) == board);

    [Fact]
    public void PointOf_OtherHand_IsMirroredOnTheLane() =>
        Gen.Select(AnyLane, AnyBoard).Sample((lane, board) =>
        {
            var right = lane.PointOf(board, Feet.FromFeet(40), Hand.Right);
            var left = lane.PointOf(board, Feet.FromFeet(40), Hand.Left);
            Assert.Equal(lane.Width.Value, right.Across.Value + left.Across.Value, 9);
            Assert.Equal(right.Down, left.Down);
            Assert.Equal(board.Mirrored(), lane.BoardOf(right, Hand.Left));
        });

    [Theory]
    [InlineData(MarkerKind.Arrow, 1, Hand.Right, 5)]
    [InlineData(MarkerKind.Arrow, 2, Hand.Right, 10)]
    [InlineData(MarkerKind.Arrow, 7, Hand.Right, 35)]
    [InlineData(MarkerKind.Arrow, 2, Hand.Left, 10)]
    [InlineData(MarkerKind.Dot, 1, Hand.Right, 3)]
    [InlineData(MarkerKind.Dot, 2, Hand.Right, 8)]
    [InlineData(MarkerKind.Dot, 1, Hand.Left, 32)]
    [InlineData(MarkerKind.Dot, 2, Hand.Left, 37)]
    [InlineData(MarkerKind.Downlane, 1, Hand.Left, 30)]
    public void Find_Number_CountsFromTheBallHandEdge(MarkerKind kind, int number, Hand hand, double board)
    {
        var mark = SampleLane.Usual.Find(kind, number, hand);
        Assert.NotNull(mark);
        Assert.Equal(board, LaneProfile.BoardFor(mark, hand).Boards);
    }

    [Fact]
    public void Find_TwoOnOneBoard_NearestFirst()
    {
        Assert.Equal(40, SampleLane.Usual.Find(MarkerKind.Downlane, 1, Hand.Right)!.Distance.Value);
        Assert.Equal(43, SampleLane.Usual.Find(MarkerKind.Downlane, 2, Hand.Right)!.Distance.Value);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(8)]
    public void Find_NoSuchNumber_IsNull(int number) => Assert.Null(SampleLane.Usual.Find(MarkerKind.Arrow, number, Hand.Right));

    [Fact]
    public void Find_MirroredLaneAndHand_IsTheMirroredMark()
    {
        var mirrored = SampleLane.Mirrored(SampleLane.Usual);
        foreach (var kind in Enum.GetValues<MarkerKind>())
        {
            for (var number = 1; SampleLane.Usual.Find(kind, number, Hand.Right) is { } right; number++)
            {
                var left = mirrored.Find(kind, number, Hand.Left);
                Assert.NotNull(left);
                Assert.Equal(LaneProfile.BoardFor(right, Hand.Right), LaneProfile.BoardFor(left, Hand.Left));
                Assert.Equal(right.FromRight.Mirrored(), left.FromRight);
                Assert.Equal(right.Distance, left.Distance);
            }
        }
    }
}
