using System.Text;
using AimTrainer.Sessions;

namespace AimTrainer.Feeds.Tests;

/// <summary>Files that are wrong, and the very words that are said of each. Made here and not kept as files, for their bytes to be seen.</summary>
public class BadCsvTests
{
    private const string Head = "time,bowler,arrowsBoard,speedMph,note\n";
    private const string Good = "2026-03-01T18:05:09,Ann,10.5,17.1,fine\n";

    private static readonly CsvSettings Centimetres = TestLane.Settings with
    {
        Mapping = new CsvMapping
        {
            Delimiter = ';',
            DecimalComma = true,
            PositionsFrom = LaneEdge.Left,
            BoardsCountFrom = LaneEdge.Right,
            TimeFormat = "dd.MM.yyyy HH:mm",
            Columns =
            [
                new MappedColumn("Position (cm)", ShotColumn.BoardAt, MappedUnit.Centimetre, 40),
                new MappedColumn("Tempo", ShotColumn.SpeedMph, MappedUnit.KilometrePerHour),
                new MappedColumn("Wetter", ShotColumn.Ignore),
            ],
        },
    };

    private static readonly (string Name, byte[] Bytes, CsvSettings Settings)[] Cases =
    [
        Ours("empty file", ""),
        Ours("only line ends", "\n\r\n\n"),
        Ours("only a byte order mark", [0xEF, 0xBB, 0xBF]),
        Ours("headings only", Head),
        Ours("headings only, without line end", Head.TrimEnd()),
        Ours("a picture", [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 0x0D, 0x49, 0x48, 0x44, 0x52]),
        Ours("UTF-16 without a mark", Encoding.Unicode.GetBytes(Head + Good)),
        Ours("no column that says where", "time,bowler,speedMph\n2026-03-01T18:05:09,Ann,17\n"),
        Ours("semicolons", "time;arrowsBoard;note\n2026-03-01T18:05:09;10;x\n"),
        Ours("tabs", "time\tarrowsBoard\n2026-03-01T18:05:09\t10\n"),
        Ours("no headings", "10.5,17\n11,17\n"),
        Ours("column twice", "arrowsBoard,ARROWSBOARD\n10,10\n"),
        Ours("distance twice", "boardAt15,boardAt15.0\n10,10\n"),
        Ours("distance off the lane", "boardAt75,arrowsBoard\n10,10\n"),
        Ours("unknown columns", "arowsBoard,speed,weather,,boardAt40\n1,2,3,4,10\n"),
        Ours("heading with control characters", "arrowsBoard,\"a\u001b[31m\nb\"\n10,1\n"),
        Ours("too few cells", Head + "2026-03-01T18:05:09,Ann,10.5\n" + Good),
        Ours("too many cells", Head + "2026-03-01T18:05:09,Ann,10,5,17,1,fine\n" + Good),
        Ours("decimal comma", Head + ",Ann,\"10,5\",\"17,1\",\n" + Good),
        Ours("thousands", Head + ",Ann,\"1,010.5\",17,\n" + Good),
        Ours("words for numbers", Head + ",Ann,ten,fast,\n" + Good),
        Ours("NaN and infinity", Head + ",Ann,NaN,Infinity,\n,Ann,-Infinity,1e999,\n" + Good),
        Ours("units in cells", Head + ",Ann,10 boards,17mph,\n" + Good),
        Ours("negative and out of range", Head + ",Ann,-5,-1,\n,Ann,44.01,40.1,\n" + Good),
        Ours("dates wrong", Head + "1.3.2026 18:05,Ann,10,17,\n2026-02-30T10:00:00,Ann,10,17,\n2026-03-01,Ann,10,17,\nyesterday,Ann,10,17,\n" + Good),
        Ours("hand wrong", "hand,arrowsBoard\nboth,10\nL,10\nLEFT,10\n"),
        Ours("speed place wrong", "arrowsBoard,speedMph,speedAt\n10,17,somewhere\n10,17,Pins\n"),
        Ours("pins wrong", "arrowsBoard,pins\n10,11\n10,-1\n10,X\n10,9.5\n10,10\n"),
        Ours("angles and revs out of range", "arrowsBoard,launchAngleDeg,entryAngleDeg,axisRotationDeg,axisTiltDeg,revsRpm\n10,21,-21,181,91,1001\n"),
        Ours("breakpoint distance alone", "breakpointBoard,breakpointFeet\n,41\n,x\nx,41\n7,61\n"),
        Ours("two boards at one distance", "arrowsBoard,boardAt15\n10,11\n10,10\n"),
        Ours("quote never closed", Head + ",Ann,10,17,\"no end\n" + Good + Good),
        Ours("quote never closed in the headings", "arrowsBoard,\"note\n10,a\n11,b\n"),
        Ours("quote never closed at the end", Head + Good + ",Ann,10,17,\"no end"),
        Ours("quote never closed, others later", Head + ",Ann,10,17,\"no end\n,Ann,11,17,\"an end\"\n" + Good),
        Ours("text after a quote", Head + ",Ann,10,17,\"an end\" and more\n" + Good),
        Ours("bytes that are not UTF-8", [.. Encoding.UTF8.GetBytes(Head), .. ",Ann,10,17,caf"u8, 0xE9, .. "\n"u8]),
        Ours("control characters in text", Head + ",A\u0007nn,10,17,\n,Ann,10,17,a\u001b[2J\n"),
        Ours("NUL within the file", Head + ",Ann,1\00,17,\n" + Good),
        Ours("NULs after a number", "arrowsBoard,pins\n10\0,9\n10,9\0\n10,9\n"),
        Ours("words too long", "arrowsBoard,ball,note,id\n10," + new string('b', 201) + "," + new string('n', 2001) + "," + new string('i', 201) + "\n"),
        Ours("long cell", Head + ",Ann," + new string('9', 500) + "x,17,\n"),
        Ours("line too long", Head + new string(',', CsvRows.LongestRow + 10) + "\n" + Good),
        Ours("headings too long", new string('h', CsvRows.LongestRow + 10) + "\n" + Good),
        Ours("everything at once", "time,hand,arrowsBoard,speedMph,speedAt,pins\nnoon,no,a,b,c,d\n"),
        ("mapped: point in a file of decimal commas", Text("hand;Position (cm);Tempo\nright;70.5;27,4\n"), Centimetres),
        ("mapped: out of range in their unit", Text("hand;Position (cm);Tempo\nright;150;99\n"), Centimetres),
        ("mapped: no hand to count from", Text("Position (cm);Tempo;arrowsBoard\n70,5;27,4;10\n"), Centimetres),
        ("mapped: column missing", Text("hand;Position (cm);Wetter\nright;70,5;nass\n"), Centimetres),
        ("mapped: time in another format", Text("time;hand;Position (cm);Tempo\n2026-03-01T18:05;right;70,5;27\n01.03.2026 18:05;right;70,5;27\n"), Centimetres),
    ];

    public static TheoryData<string> Names => [.. Cases.Select(bad => bad.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Read_BadFile_SaysExactlyThis(string name)
    {
        var (_, bytes, settings) = Cases.Single(bad => bad.Name == name);
        Assert.Equal(Golden(name), Said(bytes, settings));
    }

    [Fact]
    public void Golden_EveryEntry_HasItsCase() =>
        Assert.Equal(Cases.Select(bad => bad.Name), Lines().Where(line => line.StartsWith("## ", StringComparison.Ordinal)).Select(line => line[3..]));

    private static List<string> Said(byte[] bytes, CsvSettings settings)
    {
        var items = CsvShots.Read(new MemoryStream(bytes), "bad.csv", settings).ToList();
        return [.. items.Problems(), $"shots read: {items.OfType<FeedItem.ShotRead>().Count()}"];
    }

    private static List<string> Golden(string name) =>
        [.. Lines().SkipWhile(line => line != "## " + name).Skip(1).TakeWhile(line => !line.StartsWith("## ", StringComparison.Ordinal))];

    private static string[] Lines() => File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Csv", "bad-csv.golden.txt"));

    private static byte[] Text(string text) => Encoding.UTF8.GetBytes(text);

    private static (string Name, byte[] Bytes, CsvSettings Settings) Ours(string name, string text) => (name, Text(text), TestLane.Settings);

    private static (string Name, byte[] Bytes, CsvSettings Settings) Ours(string name, byte[] bytes) => (name, bytes, TestLane.Settings);
}
