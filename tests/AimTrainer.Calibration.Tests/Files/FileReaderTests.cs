using System.Text;
using AimTrainer.Domain;
using CsCheck;

namespace AimTrainer.Calibration.Tests;

public sealed class FileReaderTests
{
    private const string Map = """
        { "format": 1, "picture": { "width": 1920, "height": 1080 }, "laneWidthInches": 41.5,
          "matrix": [[10, 0, 100], [0, 1, 200], [0, 0.001, 1]],
          "distortion": { "terms": 0, "k1": 0, "k2": 0 }, "stretch": { "fromFeet": 0, "toFeet": 60 } }
        """;

    [Fact]
    public void MarksFile_MarksAlone_TakesUsualPictureAndLane()
    {
        var read = MarksFileReader.Read("m.json", Encoding.UTF8.GetBytes("""{ "marks": [ { "boardFromRight": 0.5, "feet": 0, "x": 1, "y": 2.5 } ] }"""));
        var marks = read.Value!;
        Assert.Equal((new PictureSize(1920, 1080), 41.5, null), (marks.Picture, marks.LaneWidth.Value, marks.Stretch));
        Assert.Equal(new CalibrationMark(default, new ProjectorPixel(1, 2.5)), Assert.Single(marks.Marks));
    }

    [Fact]
    public void MarksFile_AllThereIs_IsRead()
    {
        var read = MarksFileReader.Read("m.json", Encoding.UTF8.GetBytes("""
            { "format": 1, "picture": { "width": 1280, "height": 800 }, "laneWidthInches": 42,
              "stretch": { "fromFeet": 20, "toFeet": 60, "nearOverlapFeet": 4 },
              "marks": [ { "name": "arrow 2", "boardFromRight": 39.5, "feet": 13.5, "x": 1, "y": 2 } ] }
            """)).Value!;
        Assert.Equal(new PictureSize(1280, 800), read.Picture);
        Assert.Equal(new LaneStretch(Feet.FromFeet(20), Feet.FromFeet(60), Feet.FromFeet(4), default), read.Stretch);
        Assert.Equal((42, "arrow 2"), (read.Marks[0].Lane.Across.Value, read.Marks[0].Name));
    }

    [Theory]
    [InlineData("""{ "marks": [ { "boardFromRight": 5, "feet": 0, "x": 1 } ] }""", "$.marks[0]: found no \"y\"")]
    [InlineData("""{ "marks": [ { "boardFromRight": 5, "feet": 0, "x": 1, "y": "2" } ] }""", "$.marks[0].y: found \"2\"")]
    [InlineData("""{ "marks": [], "picture": { "width": 0, "height": 5 } }""", "$.picture.width: found 0")]
    [InlineData("""{ "marks": [], "stretch": { "fromFeet": 5, "toFeet": 5 } }""", "$.stretch.toFeet: found 5; allowed: more than fromFeet")]
    [InlineData("""{ "marks": [], "stretch": { "fromFeet": 5, "toFeet": 9, "nearOverlapFeet": 3, "farOverlapFeet": 2 } }""", "$.stretch: found overlaps longer than the stretch")]
    [InlineData("""{ "mark": [] }""", "$: found no \"marks\"")]
    public void MarksFile_Wrong_SaysWhere(string json, string words)
    {
        var read = MarksFileReader.Read("m.json", Encoding.UTF8.GetBytes(json));
        Assert.Null(read.Value);
        Assert.Contains(read.Problems, problem => problem.ToString().Contains("m.json:1: " + words, StringComparison.Ordinal));
    }

    [Fact]
    public void PointsFile_EitherWay_IsRead()
    {
        var read = PointsFileReader.Read(
            "p.json", Encoding.UTF8.GetBytes("""{ "points": [ { "boardFromRight": 20, "feet": 45 }, { "x": 3, "y": 4 } ] }"""), Inches.FromInches(41.5)).Value!;
        Assert.Equal([new MapQuestion(new LanePoint(Inches.FromInches(20.75), Feet.FromFeet(45)), null), new MapQuestion(null, new ProjectorPixel(3, 4))], read.Points);
    }

    [Theory]
    [InlineData("""{ "points": [ { "feet": 3 } ] }""", "$.points[0]: found none of boardFromRight, x")]
    [InlineData("""{ "points": [ { "boardFromRight": 3, "x": 3 } ] }""", "$.points[0].x: found \"x\" beside \"boardFromRight\"")]
    [InlineData("""{ "points": [ { "x": 3, "feet": 3 } ] }""", "$.points[0]: found no \"y\"")]
    public void PointsFile_Wrong_SaysWhere(string json, string words)
    {
        var read = PointsFileReader.Read("p.json", Encoding.UTF8.GetBytes(json), Inches.FromInches(41.5));
        Assert.Null(read.Value);
        Assert.Contains(read.Problems, problem => problem.ToString().Contains("p.json:1: " + words, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("", "", "")]
    [InlineData("[[10, 0, 100], [0, 1, 200], [0, 0.001, 1]]", "[[-10, 0, -100], [0, -1, -200], [0, -0.001, -1]]", "")]
    [InlineData("[[10, 0, 100]", "[[-10, 0, 100]", "$.matrix: found a matrix that shows the lane as in a mirror")]
    [InlineData("[0, 0.001, 1]", "[0, 0.01, -1]", "$.matrix: found a matrix that folds the lane within its stretch")]
    [InlineData("\"k1\": 0", "\"k1\": -0.5", "$.distortion: found a lens that folds the picture over on itself")]
    [InlineData("[0, 1, 200], ", "", "$.matrix: found a list of 2")]
    [InlineData("\"format\": 1", "\"format\": 1, \"monitor\": { \"name\": \"A\", \"width\": 800, \"height\": 600, \"refreshHertz\": 60 }", "$.monitor: found A at 800 x 600, 60 Hz")]
    [InlineData("\"format\": 1", "\"format\": 1, \"station\": 2, \"projector\": \"A b\"", "$.projector: found \"A b\"")]
    [InlineData("\"format\": 1", "\"format\": 1, \"savedAt\": \"yesterday\"", "$.savedAt: found \"yesterday\"")]
    public void MapFile_OneThingChanged_GoodOrSaysWhere(string from, string to, string words)
    {
        var read = MapFileReader.Read("map.json", Encoding.UTF8.GetBytes(from.Length == 0 ? Map : Map.Replace(from, to, StringComparison.Ordinal)));
        Assert.Equal(words.Length == 0, read.Value is not null);
        if (words.Length > 0)
        {
            Assert.Contains(read.Problems, problem => problem.ToString().Contains(words, StringComparison.Ordinal));
        }
        else
        {
            // A matrix with all signs turned is the same map.
            Assert.Equal(1, read.Value!.Map.Homography.M33);
        }
    }

    [Fact]
    public void MapFile_AnyBytesChanged_NeverThrowsAndNeverGivesAMapThatFolds() =>
        Gen.Select(Gen.Int[0, Map.Length - 1], Gen.Char[' ', '~']).List[1, 4].Sample(changes =>
        {
            var text = new StringBuilder(Map);
            foreach (var (at, letter) in changes)
            {
                text[at] = letter;
            }

            var read = MapFileReader.Read("map.json", Encoding.UTF8.GetBytes(text.ToString()));
            Assert.NotEqual(read.Value is null, read.Problems.Count == 0);
            if (read.Value is { } saved)
            {
                Assert.All([saved.Map.Stretch.From, saved.Map.Stretch.To], end => Assert.NotNull(saved.Map.TryPixelOf(new LanePoint(default, end))));
            }
        }, iter: 3000);
}
