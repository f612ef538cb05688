namespace AimTrainer.Domain.Tests;

/// <summary>Lanes for tests.</summary>
internal static class SampleLane
{
    /// <summary>A lane of the usual width, arrows on every fifth board, and marks that are not symmetric, so that a wrong hand shows.</summary>
    public static LaneProfile Usual { get; } = new()
    {
        Name = "usual",
        Width = Inches.FromInches(41.5),
        ArrowsDistance = Feet.FromFeet(15),
        StraightDistance = Feet.FromFeet(20),
        Markers =
        [
            .. Enumerable.Range(1, 7).Reverse().Select(number =>
                new LaneMarker(MarkerKind.Arrow, Board.FromBoards(number * 5), Feet.FromFeet(16 - (0.75 * Math.Abs(number - 4))))),
            new LaneMarker(MarkerKind.Dot, Board.FromBoards(8), Feet.FromFeet(7)),
            new LaneMarker(MarkerKind.Dot, Board.FromBoards(3), Feet.FromFeet(7.5)),
            new LaneMarker(MarkerKind.Downlane, Board.FromBoards(10), Feet.FromFeet(43)),
            new LaneMarker(MarkerKind.Downlane, Board.FromBoards(10), Feet.FromFeet(40)),
        ],
    };

    /// <summary>The lane as a mirror shows it.</summary>
    public static LaneProfile Mirrored(LaneProfile lane) =>
        lane with { Markers = lane.Markers.AsEnumerable().Select(mark => mark with { FromRight = mark.FromRight.Mirrored() }).ToValueList() };
}
