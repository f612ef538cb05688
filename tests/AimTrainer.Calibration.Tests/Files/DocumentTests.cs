using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using AimTrainer.Domain;

namespace AimTrainer.Calibration.Tests;

/// <summary>Every example of <c>docs/calibration.md</c> is read by the program, so that the document cannot rot.</summary>
public sealed partial class DocumentTests
{
    private static readonly string Document = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "calibration.md"));

    [Fact]
    public void Examples_OfTheDocument_AreReadAsWhatTheyShow()
    {
        var examples = Example().Matches(Document).Select(match => match.Groups[1].Value).ToList();
        Assert.Equal(4, examples.Count);

        var marks = MarksFileReader.Read("marks.json", Encoding.UTF8.GetBytes(examples[0]));
        Assert.NotNull(marks.Value);
        Assert.NotNull(MapFitter.Fit(marks.Value.Marks, new FitSettings { Picture = marks.Value.Picture, LaneWidth = marks.Value.LaneWidth, Stretch = marks.Value.Stretch }).Fit);
        Assert.NotNull(PointsFileReader.Read("points.json", Encoding.UTF8.GetBytes(examples[1]), marks.Value.LaneWidth).Value);
        Assert.All(
            examples[2].Split('\n', StringSplitOptions.RemoveEmptyEntries), action => Assert.NotNull(JsonSerializer.Deserialize<PlacingAction>(action, DomainJson.Options)));
        var map = MapFileReader.Read("map.json", Encoding.UTF8.GetBytes(examples[3]));
        Assert.True(map.Value is not null, string.Join('\n', map.Problems));
        Assert.Equal(new MapPlace(3, "near"), map.Value.Place);
    }

    [Fact]
    public void Reasons_OfRefusals_AreAllInTheDocument() => Assert.All(
        Enum.GetValues<FitRefusalReason>(), reason => Assert.Contains($"| `{JsonNamingPolicy.CamelCase.ConvertName(reason.ToString())}` |", Document, StringComparison.Ordinal));

    [GeneratedRegex("```json\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Example();
}
