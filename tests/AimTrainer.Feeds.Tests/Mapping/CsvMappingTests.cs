using System.Globalization;
using System.Text;
using AimTrainer.Domain;

namespace AimTrainer.Feeds.Tests;

public class CsvMappingTests
{
    // Source: international yard and pound agreement of 1959 (24 FR 5348): 1 mile = 1.609344 km, 1 ft = 0.3048 m, 1 in = 25.4 mm, exact.
    [Theory]
    [InlineData("1.609344", MappedUnit.KilometrePerHour, 1)]
    [InlineData("27.358848", MappedUnit.KilometrePerHour, 17)]
    [InlineData("4.4704", MappedUnit.MetrePerSecond, 10)]
    [InlineData("17", MappedUnit.MilePerHour, 17)]
    [InlineData("17", MappedUnit.Ours, 17)]
    public void Read_Speed_IsInMilesPerHour(string cell, MappedUnit unit, double expected) =>
        Assert.Equal(expected, One(new MappedColumn("v", ShotColumn.SpeedMph, unit), "v,laydownBoard", cell + ",10").Speed!.Value.Value.Value);

    // A shot's values are rounded, which would hide a wrong last digit. Source: as above.
    [Theory]
    [InlineData(ShotColumn.SpeedMph, MappedUnit.KilometrePerHour, 160.9344, 100)]
    [InlineData(ShotColumn.SpeedMph, MappedUnit.MetrePerSecond, 44.704, 100)]
    [InlineData(ShotColumn.BreakpointFeet, MappedUnit.Metre, 18.288, 60)]
    [InlineData(ShotColumn.BreakpointFeet, MappedUnit.Centimetre, 1828.8, 60)]
    [InlineData(ShotColumn.BreakpointFeet, MappedUnit.Millimetre, 18288, 60)]
    [InlineData(ShotColumn.BreakpointFeet, MappedUnit.Inch, 720, 60)]
    [InlineData(ShotColumn.BoardAt, MappedUnit.Metre, 1.0541, 41.5)]
    [InlineData(ShotColumn.BoardAt, MappedUnit.Centimetre, 105.41, 41.5)]
    [InlineData(ShotColumn.BoardAt, MappedUnit.Millimetre, 1054.1, 41.5)]
    [InlineData(ShotColumn.BoardAt, MappedUnit.Foot, 3.5, 42)]
    [InlineData(ShotColumn.LaunchAngleDeg, MappedUnit.Radian, Math.PI, 180)]
    public void Factor_ExactDefinition_IsKeptToTheLastDigit(ShotColumn column, MappedUnit unit, double theirs, double ours) =>
        Assert.Equal(ours, theirs * MappedUnits.Factor(column, unit), 1e-11);

    // Source: Ji, Hooper et al., AIP Advances, April 2025: 17.9 mph (28.8 km/h), both rounded to a tenth.
    [Fact]
    public void Read_PublishedSpeedInKilometresPerHour_IsThePublishedOneInMiles() =>
        Assert.InRange(
            One(new MappedColumn("v", ShotColumn.SpeedMph, MappedUnit.KilometrePerHour), "v,laydownBoard", "28.8,10").Speed!.Value.Value.Value, 17.85, 17.95);

    // Source: as above, 42 ft = 12.8016 m.
    [Theory]
    [InlineData("12.8016", MappedUnit.Metre)]
    [InlineData("1280.16", MappedUnit.Centimetre)]
    [InlineData("12801.6", MappedUnit.Millimetre)]
    [InlineData("504", MappedUnit.Inch)]
    [InlineData("42", MappedUnit.Foot)]
    [InlineData("42", MappedUnit.Ours)]
    public void Read_Distance_IsInFeet(string cell, MappedUnit unit) =>
        Assert.Equal(42, One(new MappedColumn("d", ShotColumn.BreakpointFeet, unit), "d,breakpointBoard", cell + ",10").Breakpoint!.Value.Distance!.Value.Value);

    // Source: derived in the trade reference from 39 boards on 41.5 in: board 20 at 20.750 in, 5 at 4.7885 in, 17.5 at 18.0897 in.
    [Theory]
    [InlineData("20.750", MappedUnit.Inch, 20)]
    [InlineData("4.7885", MappedUnit.Inch, 5)]
    [InlineData("18.0897", MappedUnit.Inch, 17.5)]
    [InlineData("52.705", MappedUnit.Centimetre, 20)]
    [InlineData("527.05", MappedUnit.Millimetre, 20)]
    [InlineData("0.52705", MappedUnit.Metre, 20)]
    [InlineData("1.72916667", MappedUnit.Foot, 20)]
    [InlineData("0", MappedUnit.Inch, 0.5)]
    [InlineData("41.5", MappedUnit.Inch, 39.5)]
    public void Read_PositionAcross_IsInBoards(string cell, MappedUnit unit, double expected) =>
        Assert.Equal(expected, One(new MappedColumn("p", ShotColumn.BoardAt, unit, 40), "p", cell).BoardAt(40));

    [Theory]
    [InlineData("right", LaneEdge.Left, 30)]
    [InlineData("right", LaneEdge.Right, 10)]
    [InlineData("right", LaneEdge.Hand, 10)]
    [InlineData("left", LaneEdge.Left, 10)]
    [InlineData("left", LaneEdge.Right, 30)]
    [InlineData("left", LaneEdge.Hand, 10)]
    public void Read_CountFromAnEdge_IsTheBowlersBoard(string hand, LaneEdge edge, double expected)
    {
        var inBoards = TestLane.Settings with { Mapping = new CsvMapping { BoardsCountFrom = edge } };
        Assert.Equal(expected, Assert.Single(FeedItems.Read($"hand,arrowsBoard\n{hand},10\n", inBoards).Shots()).BoardAt(15));
        var inInches = TestLane.Settings with
        {
            Mapping = new CsvMapping { PositionsFrom = edge, Columns = [new MappedColumn("in", ShotColumn.ArrowsBoard, MappedUnit.Inch)] },
        };
        var across = ((10 - 0.5) * 41.5 / 39).ToString(CultureInfo.InvariantCulture);
        Assert.Equal(expected, Assert.Single(FeedItems.Read($"hand,in\n{hand},{across}\n", inInches).Shots()).BoardAt(15));
    }

    [Fact]
    public void Read_NarrowerLane_UsesItsOwnWidth()
    {
        var settings = new CsvSettings
        {
            Lane = TestLane.Lane with { Width = Inches.FromInches(41) },
            Mapping = new CsvMapping { Columns = [new MappedColumn("in", ShotColumn.ArrowsBoard, MappedUnit.Inch)] },
        };
        Assert.Equal(20, Assert.Single(FeedItems.Read("in\n20.5\n", settings).Shots()).BoardAt(15));
    }

    [Fact]
    public void Read_AnglesInRadiansOfTheOtherSign_AreInDegreesOfOurs()
    {
        var column = new MappedColumn("a", ShotColumn.LaunchAngleDeg, MappedUnit.Radian, Negate: true);
        var radian = (Math.PI / 180).ToString("R", CultureInfo.InvariantCulture);
        Assert.Equal(-1, One(column, "a,arrowsBoard", radian + ",10").LaunchAngle!.Value.Value);
    }

    [Fact]
    public void Read_SpeedPlaceOfTheMapping_HoldsUnlessTheRowSaysOtherwise()
    {
        var mapping = new CsvMapping { Columns = [new MappedColumn("v", ShotColumn.SpeedMph, SpeedAt: SpeedPlace.Pins)] };
        var shots = FeedItems.Read("arrowsBoard,v,speedAt\n10,17,\n10,17,release\n", TestLane.Settings with { Mapping = mapping }).Shots();
        Assert.Equal([SpeedPlace.Pins, SpeedPlace.Release], shots.Select(shot => shot.Speed!.Value.Place));
    }

    [Fact]
    public void Read_SemicolonsDecimalCommasAndOwnTimes_AreRead()
    {
        var read = CsvMappingFile.Read("map.json", """
            {
              "delimiter": ";", "decimalComma": true, "boardsCountFrom": "left", "timeFormat": "dd.MM.yyyy HH:mm:ss",
              "columns": {
                "Zeit": { "is": "time" },
                "Pfeile": { "is": "arrowsBoard", "unit": "board" },
                "Brett 12 m": { "is": "boardAt", "feet": 39.37 },
                "Tempo": { "is": "speedMph", "unit": "km/h", "at": "average" },
                "Wetter": { "is": "ignore" }
              }
            }
            """u8);
        Assert.Empty(read.Problems);
        var settings = TestLane.Settings with { Mapping = read.Value!, Hand = Hand.Right };
        var items = FeedItems.Read("zeit;Pfeile;Brett 12 m;Tempo;Wetter\n01.03.2026 18:05:09;29,5;33;27,36;kühl\n", settings);
        Assert.Empty(items.Problems());
        var shot = Assert.Single(items.Shots());
        Assert.Equal(new DateTimeOffset(2026, 3, 1, 18, 5, 9, TimeSpan.Zero), shot.Time);
        Assert.Equal((10.5, 7.0), (shot.BoardAt(15), shot.BoardAt(39.37)));
        Assert.Equal(SpeedPlace.Average, shot.Speed!.Value.Place);
        Assert.Equal(17, shot.Speed.Value.Value.Value, 0.005);
    }

    [Theory]
    [InlineData("[]", "map.json:1: $: ")]
    [InlineData("{\n \"colums\": {}\n}", "map.json:2: $.colums: ")]
    [InlineData("{\n \"delimiter\": \"x\"\n}", "map.json:2: $.delimiter: ")]
    [InlineData("{ \"decimalComma\": true }", "map.json:1: $.decimalComma: ")]
    [InlineData("{ \"decimalComma\": 1 }", "map.json:1: $.decimalComma: ")]
    [InlineData("{ \"boardsCountFrom\": \"middle\" }", "map.json:1: $.boardsCountFrom: ")]
    [InlineData("{ \"timeFormat\": \"x\" }", "map.json:1: $.timeFormat: ")]
    [InlineData("{\n\"columns\": {\n\"A\": { \"is\": \"laydwnBoard\" } } }", "map.json:3: $.columns.A.is: ")]
    [InlineData("{ \"columns\": { \"A\": { } } }", "map.json:1: $.columns.A: ")]
    [InlineData("{ \"columns\": { \"A\": { \"is\": \"speedMph\", \"unit\": \"cm\" } } }", "map.json:1: $.columns.A.unit: ")]
    [InlineData("{ \"columns\": { \"A\": { \"is\": \"note\", \"unit\": \"cm\" } } }", "map.json:1: $.columns.A.unit: ")]
    [InlineData("{ \"columns\": { \"A\": { \"is\": \"boardAt\" } } }", "map.json:1: $.columns.A.is: ")]
    [InlineData("{ \"columns\": { \"A\": { \"is\": \"boardAt\", \"feet\": 61 } } }", "map.json:1: $.columns.A.feet: ")]
    [InlineData("{ \"columns\": { \"A\": { \"is\": \"note\", \"feet\": 6 } } }", "map.json:1: $.columns.A.feet: ")]
    [InlineData("{ \"columns\": { \"A\": { \"is\": \"note\", \"negate\": true } } }", "map.json:1: $.columns.A.negate: ")]
    [InlineData("{ \"columns\": { \"A\": { \"is\": \"note\", \"at\": \"pins\" } } }", "map.json:1: $.columns.A.at: ")]
    [InlineData("{ \"columns\": { \"A\": { \"is\": \"note\" },\n \"a\": { \"is\": \"ball\" } } }", "map.json:2: $.columns.a: ")]
    [InlineData("{ \"columns\": { \"A\": { \"is\": \"note\" },\n \"A\": { \"is\": \"ball\" } } }", "map.json:2: $.columns.A: ")]
    [InlineData("{ \"columns\": ", "map.json:1: ")]
    [InlineData("", "map.json: ")]
    public void Read_WrongMapping_SaysWhere(string json, string expected)
    {
        var read = CsvMappingFile.Read("map.json", Encoding.UTF8.GetBytes(json));
        Assert.Null(read.Value);
        Assert.StartsWith(expected, Assert.Single(read.Problems).ToString(), StringComparison.Ordinal);
    }

    private static Shot One(MappedColumn column, string headings, string row)
    {
        var items = FeedItems.Read($"{headings}\n{row}\n", TestLane.Settings with { Mapping = new CsvMapping { Columns = [column] } });
        Assert.Empty(items.Problems());
        return Assert.Single(items.Shots());
    }
}
