using System.Text;
using AimTrainer.Sessions;
using CsCheck;

namespace AimTrainer.Feeds.Tests;

/// <summary>Whatever the bytes: nothing is thrown, reading ends, and every problem and every shot has its line.</summary>
public class CsvFuzzTests
{
    private static readonly byte[] Sample = Encoding.UTF8.GetBytes(
        "id,time,bowler,hand,laydownBoard,arrowsBoard,breakpointBoard,breakpointFeet,boardAt40,speedMph,speedAt,pins,note\r\n"
        + "a,2026-03-01T18:05:09Z,Zoë,right,18,12.5,7,41,8,17.2,release,9,\"one, \"\"two\"\"\r\nthree\"\r\n"
        + "b,2026-03-01T18:06:09+01:00,Ann,left,-3.5,44,7,,,1e1,pins,10,\r\n");

    private static readonly CsvSettings Mapped = TestLane.Settings with
    {
        Mapping = new CsvMapping
        {
            DecimalComma = true,
            Delimiter = ';',
            BoardsCountFrom = LaneEdge.Left,
            Columns = [new MappedColumn("arrowsBoard", ShotColumn.BoardAt, MappedUnit.Centimetre, 15)],
        },
    };

    [Fact]
    public void Read_RandomBytes_NeverThrows() => Gen.Byte.Array[0, 300].Sample(bytes => Look(bytes, TestLane.Settings), iter: 3000);

    [Fact]
    public void Read_RandomCsvLikeText_NeverThrows() =>
        Gen.OneOf("\"", ",", ";", "\r", "\n", "\r\n", "10.5", "1e9", "-", "\0", "\uFEFF", "é", "\ud83c\udfb3", "NaN", "2026-03-01T18:05", "right").Array[0, 60]
            .Sample(parts => Look(Encoding.UTF8.GetBytes("arrowsBoard,time,hand\n" + string.Concat(parts)), TestLane.Settings), iter: 3000);

    [Fact]
    public void Read_Mutations_NeverThrow() =>
        Gen.Select(Gen.Int[0, Sample.Length - 1], Gen.Byte, Gen.Int[0, 4]).Array[1, 6].Sample(
            mutations =>
            {
                var bytes = Sample.ToList();
                foreach (var (index, value, kind) in mutations)
                {
                    var at = index % Math.Max(1, bytes.Count);
                    switch (kind)
                    {
                        case 0:
                            bytes.Insert(at, value);
                            break;
                        case 1:
                            bytes.RemoveRange(at, Math.Min(bytes.Count - at, 1 + (value % 5)));
                            break;
                        case 2:
                            bytes.InsertRange(at, [.. Sample.Take(value)]);
                            break;
                        case 3:
                            bytes.Insert(at, (byte)"\",;\r\n"[value % 5]);
                            break;
                        default:
                            bytes[Math.Min(at, bytes.Count - 1)] = value;
                            break;
                    }

                    bytes.Add((byte)'\n');
                }

                Look([.. bytes], TestLane.Settings);
                Look([.. bytes], Mapped);
            },
            iter: 2000);

    private static void Look(byte[] bytes, CsvSettings settings)
    {
        // A row takes at least one byte, and gives at most one problem a cell and a few of the row: reading ends.
        var most = (bytes.Length * 30) + 100;
        var items = CsvShots.Read(new MemoryStream(bytes), "fuzz.csv", settings).Take(most + 1).ToList();
        Assert.InRange(items.Count, 1, most);
        Assert.All(items, item => Assert.InRange(
            item is FeedItem.ShotRead shot ? shot.Line : ((FeedItem.Unreadable)item).Problem.Line, item is FeedItem.ShotRead ? 2 : 0, bytes.Length + 1));
    }
}
