using AimTrainer.Domain;

namespace AimTrainer.Feeds.Tests;

/// <summary>A lane and what is aimed at, for these tests.</summary>
internal static class TestLane
{
    public static LaneProfile Lane { get; } = new()
    {
        Name = "test lane",
        Width = Inches.FromInches(41.5),
        ArrowsDistance = Feet.FromFeet(15),
        StraightDistance = Feet.FromFeet(25),
        Markers =
        [
            new LaneMarker(MarkerKind.Downlane, Board.FromBoards(10), Feet.FromFeet(41.5)),
            new LaneMarker(MarkerKind.Downlane, Board.FromBoards(15), Feet.FromFeet(35.5)),
        ],
    };

    public static CsvSettings Settings { get; } = new() { Lane = Lane };

    public static Aim Single(double board, double feet) => new("one", [Named("one", board, feet)]);

    public static Aim Line(double board, double feet, double farBoard, double farFeet) =>
        new("line", [Named("near", board, feet), Named("far", farBoard, farFeet)]);

    private static NamedTarget Named(string name, double board, double feet) =>
        new(name, new Target(Board.FromBoards(board), BoardOffset.FromBoards(3), Feet.FromFeet(feet)));
}
