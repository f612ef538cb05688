using System.Text;
using System.Text.RegularExpressions;
using AimTrainer.Domain;

namespace AimTrainer.Display.Tests;

/// <summary>docs/displays.md against the program.</summary>
public sealed partial class DisplayDocTests
{
    private static readonly string Doc = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "displays.md"));

    [Fact]
    public void Doc_Themes_AreAllThere() => Assert.All(ThemeLibrary.Own.AsEnumerable(), theme => Assert.Contains($"| `{theme.Id}` |", Doc, StringComparison.Ordinal));

    [Fact]
    public void Doc_SampleTheme_IsTheDefault()
    {
        var json = Sample().Match(Doc).Groups[1].Value;
        Assert.Equal(ThemeLibrary.Default, ThemeReader.Read("sample", Encoding.UTF8.GetBytes(json)).Value);
    }

    [Fact]
    public void Doc_LengthsAlongTheLane_AreThoseDrawn()
    {
        var rows = Lengths().Matches(Doc);
        Assert.Equal(4, rows.Count);
        Assert.All(rows, row =>
        {
            double Number(int group) => double.Parse(row.Groups[group].ValueSpan, System.Globalization.CultureInfo.InvariantCulture);
            var (lane, view) = (LaneProfileReader.Default, BowlerView.Default);
            var target = new Target(Board.LaneCentre, BoardOffset.FromBoards(Number(1)), Feet.FromFeet(Number(2)));
            var (near, far) = TargetLength.SpanOf(target, lane, view);
            Assert.Equal(Number(3), view.SeenWidth(lane.InchesOf(target.Width), target.Distance).Value, 0.005);
            Assert.Equal(Number(4), view.SeenHeight(near, far).Value, 0.005);
            Assert.Equal(Number(5), (far.Value - near.Value) * 12, 0.05);
        });
    }

    [GeneratedRegex("```json\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Sample();

    [GeneratedRegex(@"\| (\d+) boards? at (\d+) ft \| ([0-9.]+)° \| ([0-9.]+)° \| ([0-9.]+) in \|")]
    private static partial Regex Lengths();
}
