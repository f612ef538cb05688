using System.Text;
using CsCheck;

namespace AimTrainer.Feeds.Tests;

public class CsvMappingProposalTests
{
    [Theory]
    [InlineData("Speed (km/h)", ShotColumn.SpeedMph, MappedUnit.KilometrePerHour)]
    [InlineData("ball_speed_mph", ShotColumn.SpeedMph, MappedUnit.MilePerHour)]
    [InlineData("Speed [m/s]", ShotColumn.SpeedMph, MappedUnit.MetrePerSecond)]
    [InlineData("Arrow Board", ShotColumn.ArrowsBoard, MappedUnit.Board)]
    [InlineData("Arrows (cm)", ShotColumn.ArrowsBoard, MappedUnit.Centimetre)]
    [InlineData("Laydown", ShotColumn.LaydownBoard, MappedUnit.Ours)]
    [InlineData("Lay Down Position in", ShotColumn.LaydownBoard, MappedUnit.Inch)]
    [InlineData("Board @ 40ft", ShotColumn.BoardAt, MappedUnit.Board, 40)]
    [InlineData("Board at 12 m", ShotColumn.BoardAt, MappedUnit.Board, 39.37)]
    [InlineData("board_42.5_ft", ShotColumn.BoardAt, MappedUnit.Board, 42.5)]
    [InlineData("Rev Rate", ShotColumn.RevsRpm, MappedUnit.Ours)]
    [InlineData("Entry Angle", ShotColumn.EntryAngleDeg, MappedUnit.Ours)]
    [InlineData("LaunchAngle (rad)", ShotColumn.LaunchAngleDeg, MappedUnit.Radian)]
    [InlineData("Axis Rotation", ShotColumn.AxisRotationDeg, MappedUnit.Ours)]
    [InlineData("Tilt (deg)", ShotColumn.AxisTiltDeg, MappedUnit.Degree)]
    [InlineData("Break Point Board", ShotColumn.BreakpointBoard, MappedUnit.Board)]
    [InlineData("Breakpoint distance (m)", ShotColumn.BreakpointFeet, MappedUnit.Metre)]
    [InlineData("Entry Board", ShotColumn.EntryBoard, MappedUnit.Board)]
    [InlineData("Pins Down", ShotColumn.Pins, MappedUnit.Ours)]
    [InlineData("Date/Time", ShotColumn.Time, MappedUnit.Ours)]
    [InlineData("When", ShotColumn.Time, MappedUnit.Ours)]
    [InlineData("speedmph", ShotColumn.SpeedMph, MappedUnit.Ours)]
    public void For_PlainHeading_IsRecognised(string heading, ShotColumn column, MappedUnit unit, double feet = 0)
    {
        var mapped = Assert.Single(CsvMappingProposal.For([heading]).Mapping.Columns);
        Assert.Equal((column, unit, feet), (mapped.Is, mapped.Unit, mapped.Feet));
    }

    [Theory]
    [InlineData("Temperature")]
    [InlineData("Board")]
    [InlineData("Angle")]
    [InlineData("Score")]
    public void For_HeadingThatSaysTooLittle_IsListedAndIgnored(string heading)
    {
        var proposal = CsvMappingProposal.For([heading]);
        Assert.Equal([heading], proposal.Unrecognised);
        Assert.Equal(ShotColumn.Ignore, Assert.Single(proposal.Mapping.Columns).Is);
    }

    [Fact]
    public void ForFile_TimeInAnotherFormat_AsksForTheFormat()
    {
        var proposal = CsvMappingProposal.ForFile(new StringReader("When;arrowsBoard\n;10\n01.03.2026 18:05:09;10\n"), "theirs.csv").Value!;
        Assert.Contains("When: \"01.03.2026 18:05:09\" is not written as ISO 8601 does; add \"timeFormat\", such as \"dd.MM.yyyy HH:mm:ss\"", proposal.Questions);
    }

    [Fact]
    public void ForFile_SemicolonsAndDecimalCommas_ReadsTheFileItWasProposedFor()
    {
        const string Text = "Time;Arrow Board;Board @ 40ft;Speed (km/h);Lane Temperature\n2026-03-01T18:05;12,5;7,25;27,4;21,5\n";
        var proposal = CsvMappingProposal.ForFile(new StringReader(Text), "theirs.csv").Value!;
        Assert.Equal(["Lane Temperature"], proposal.Unrecognised);
        Assert.Contains(proposal.Questions, question => question.StartsWith("Speed (km/h): where", StringComparison.Ordinal));
        Assert.Contains(proposal.Questions, question => question.StartsWith("boardsCountFrom", StringComparison.Ordinal));
        var mapping = CsvMappingFile.Read("saved.json", Encoding.UTF8.GetBytes(proposal.Json));
        Assert.Empty(mapping.Problems);
        Assert.Equal(proposal.Mapping, mapping.Value);
        var items = FeedItems.Read(Text, TestLane.Settings with { Mapping = mapping.Value! });
        Assert.Empty(items.Problems());
        var shot = Assert.Single(items.Shots());
        Assert.Equal((12.5, 7.25), (shot.BoardAt(15), shot.BoardAt(40)));
    }

    [Fact]
    public void For_SpeedThatIsTooFastForMph_AsksForKilometres() =>
        Assert.Contains(CsvMappingProposal.For(["Speed"], [["27.5"]]).Questions, question => question.Contains("km/h", StringComparison.Ordinal));

    [Fact]
    public void For_TwoHeadingsForTheSame_TakesOneAndAsks()
    {
        var proposal = CsvMappingProposal.For(["Speed mph", "Speed km/h"]);
        Assert.Equal(["Speed km/h"], proposal.Unrecognised);
        Assert.Equal([ShotColumn.SpeedMph, ShotColumn.Ignore], proposal.Mapping.Columns.AsEnumerable().Select(column => column.Is));
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n")]
    [InlineData("a\0b")]
    public void ForFile_NotText_SaysSo(string text) => Assert.Single(CsvMappingProposal.ForFile(new StringReader(text), "bad.csv").Problems);

    [Fact]
    public void ForFile_AnyText_GivesAMappingThatIsReadBackTheSame() =>
        Gen.OneOf("speed", "board", "40", "ft", "(km/h)", ",", ";", "\t", "\n", "\"", "angle", "entry", "é", "\\", "'", "\u0007").Array[1, 20].Sample(
            parts =>
            {
                if (CsvMappingProposal.ForFile(new StringReader(string.Join(' ', parts)), "any.csv").Value is { } proposal)
                {
                    var read = CsvMappingFile.Read("saved.json", Encoding.UTF8.GetBytes(proposal.Json));
                    Assert.Empty(read.Problems);
                    Assert.Equal(proposal.Mapping, read.Value);
                }
            },
            iter: 1000);
}
