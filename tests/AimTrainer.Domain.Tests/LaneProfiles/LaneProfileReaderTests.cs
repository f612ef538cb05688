using System.Text;

namespace AimTrainer.Domain.Tests;

public sealed class LaneProfileReaderTests
{
    [Fact]
    public void Default_Arrows_LieOnEveryFifthBoard()
    {
        // Source: coaching literature without exception: arrows on boards 5, 10, ... 35. Their zone, 12 to 16 ft: rule wording.
        var arrows = LaneProfileReader.Default.Markers.AsEnumerable().Where(marker => marker.Kind == MarkerKind.Arrow).ToList();

        Assert.Equal([5.0, 10, 15, 20, 25, 30, 35], arrows.Select(arrow => arrow.FromRight.Boards));
        Assert.All(arrows, arrow => Assert.InRange(arrow.Distance.Value, 12, 16));
        Assert.Equal(15, LaneProfileReader.Default.ArrowsDistance.Value);
    }

    [Fact]
    public void Default_Dots_LieWhereATutorialPutsThem()
    {
        // Source: "Bowling lane arrows: a definition" (one source, medium confidence); zone 6 to 8 ft: rule wording.
        var dots = LaneProfileReader.Default.Markers.AsEnumerable().Where(marker => marker.Kind == MarkerKind.Dot).ToList();

        Assert.Equal([3.0, 5, 8, 11, 14, 26, 29, 32, 35, 37], dots.Select(dot => dot.FromRight.Boards));
        Assert.All(dots, dot => Assert.InRange(dot.Distance.Value, 6, 8));
    }

    [Fact]
    public void Default_Marks_AreTheSameFromEitherEdge()
    {
        var markers = LaneProfileReader.Default.Markers;

        Assert.All(markers, marker => Assert.Contains(marker with { FromRight = marker.FromRight.Mirrored() }, markers));
    }

    [Fact]
    public void Default_DocsTable_ListsEveryMark()
    {
        var docs = File.ReadAllText(TestFiles.Doc("lanes.md"));

        Assert.All(
            LaneProfileReader.Default.Markers,
            marker => Assert.Contains(
                $"| {marker.Kind.ToString().ToLowerInvariant()} | {marker.FromRight} | {marker.Distance} |", docs, StringComparison.Ordinal));
    }

    [Fact]
    public void Read_OwnProfile_KeepsEveryValue()
    {
        var read = Read("""{ "format": 1, "name": "lane 7", "widthInches": 41.25, "arrowsFeet": 14, "straightFeet": 25, "markers": [{ "kind": "downlane", "boardFromRight": 10.5, "feet": 40 }] }""");

        var expected = new LaneProfile
        {
            Name = "lane 7",
            Width = Inches.FromInches(41.25),
            ArrowsDistance = Feet.FromFeet(14),
            StraightDistance = Feet.FromFeet(25),
            Markers = [new LaneMarker(MarkerKind.Downlane, Board.FromBoards(10.5), Feet.FromFeet(40))],
        };
        Assert.Equal(expected, read.Value);
        Assert.Empty(read.Problems);
    }

    [Fact]
    public void Read_OptionalDistances_HaveDefaults()
    {
        var lane = Read("""{ "format": 1, "name": "x", "widthInches": 41.5, "markers": [] }""").Value!;

        Assert.Equal((15.0, 20.0), (lane.ArrowsDistance.Value, lane.StraightDistance.Value));
    }

    [Fact]
    public void Read_ManyErrors_TellsThemAllInOrder()
    {
        var read = Read(
            """
            {
              "format": 2,
              "widthInches": 43,
              "arrowFeet": 15,
              "straightFeet": 4.9,
              "markers": [
                { "kind": "stripe", "boardFromRight": 0.4, "feet": 61 },
                7
              ]
            }
            """);

        Assert.Null(read.Value);
        Assert.Equal(
            [
                "lane.json:1: $: found no \"name\"; allowed: a text of 1 to 80 characters",
                "lane.json:2: $.format: found 2; allowed: 1",
                "lane.json:3: $.widthInches: found 43; allowed: a number, 41 to 42",
                "lane.json:4: $.arrowFeet: found unknown key \"arrowFeet\"; allowed: arrowsFeet (the most alike), $schema, format, name, widthInches, straightFeet, markers",
                "lane.json:5: $.straightFeet: found 4.9; allowed: a number, 5 to 40",
                "lane.json:7: $.markers[0].kind: found \"stripe\"; allowed: \"arrow\", \"dot\", \"downlane\"",
                "lane.json:7: $.markers[0].boardFromRight: found 0.4; allowed: a number, 0.5 to 39.5",
                "lane.json:7: $.markers[0].feet: found 61; allowed: a number, 0 to 60",
                "lane.json:8: $.markers[1]: found 7; allowed: an object between { and }",
            ],
            read.Problems.Select(problem => problem.ToString()));
    }

    private static FileRead<LaneProfile> Read(string json) => LaneProfileReader.Read("lane.json", Encoding.UTF8.GetBytes(json));
}
