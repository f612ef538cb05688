using System.Text;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Feeds.Tests;

public class CsvShotsTests
{
    private const string EveryColumn =
        "id,time,bowler,hand,ball,laydownBoard,arrowsBoard,breakpointBoard,breakpointFeet,entryBoard,boardAt42.5,speedMph,speedAt,revsRpm,"
        + "axisRotationDeg,axisTiltDeg,launchAngleDeg,entryAngleDeg,pins,note\n"
        + "a1,2026-03-01T18:05:09+01:00,Ann,left,Blue,18.25,12.5,7,41,17.5,7.1,17.2,release,310,45,12,1.6,5.5,9,\"late, but \"\"good\"\"\"\n";

    [Fact]
    public void Read_EveryColumn_FillsEveryValue()
    {
        var read = Assert.IsType<FeedItem.ShotRead>(Assert.Single(FeedItems.Read(EveryColumn)));
        Assert.Equal(("Ann", Hand.Left, 2), (read.Bowler, read.Hand, read.Line));
        var shot = read.Shot;
        Assert.Equal("a1", shot.Id);
        Assert.Equal(new DateTimeOffset(2026, 3, 1, 18, 5, 9, TimeSpan.FromHours(1)), shot.Time);
        Assert.Equal(TimeSpan.FromHours(1), shot.Time!.Value.Offset);
        Assert.Equal(ShotSource.File, shot.Source);
        Assert.Equal("Blue", shot.Ball);
        Assert.Equal(18.25, shot.Laydown!.Value.Boards);
        Assert.Equal([(15.0, 12.5), (42.5, 7.1)], shot.Crossings.AsEnumerable().Select(crossing => (crossing.Distance.Value, crossing.Board.Boards)));
        Assert.Equal(7, shot.Breakpoint!.Value.Board.Boards);
        Assert.Equal(41, shot.Breakpoint.Value.Distance!.Value.Value);
        Assert.Equal(17.5, shot.Entry!.Value.Boards);
        Assert.Equal(new BallSpeed(MilesPerHour.FromMilesPerHour(17.2), SpeedPlace.Release), shot.Speed);
        Assert.Equal(310, shot.Revs!.Value.Value);
        Assert.Equal(45, shot.AxisRotation!.Value.Value);
        Assert.Equal(12, shot.AxisTilt!.Value.Value);
        Assert.Equal(1.6, shot.LaunchAngle!.Value.Value);
        Assert.Equal(5.5, shot.EntryAngle!.Value.Value);
        Assert.Equal(9, shot.Pins);
        Assert.Equal("late, but \"good\"", shot.Note);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Read_AnyLineEnd_GivesTheSameShotsAndLines(string lineEnd)
    {
        var text = "ARROWSboard,Note\n10,a\n\n11,\"two\nlines\"\n12,c".Replace("\n", lineEnd, StringComparison.Ordinal);
        var items = FeedItems.Read(text);
        Assert.Equal([2, 4, 6], items.OfType<FeedItem.ShotRead>().Select(item => item.Line));
        Assert.Equal([10.0, 11.0, 12.0], items.Shots().Select(shot => shot.BoardAt(15)!.Value));
        Assert.Equal($"two{lineEnd}lines", items.Shots()[1].Note);
    }

    public static TheoryData<string> Encodings => ["utf-8", "utf-8-bom", "utf-16-le", "utf-16-be"];

    [Theory]
    [MemberData(nameof(Encodings))]
    public void Read_EncodingWithItsMark_ReadsTheText(string name)
    {
        Encoding encoding = name switch
        {
            "utf-8" => new UTF8Encoding(false),
            "utf-8-bom" => new UTF8Encoding(true),
            "utf-16-le" => new UnicodeEncoding(false, true),
            _ => new UnicodeEncoding(true, true),
        };
        byte[] bytes = [.. encoding.GetPreamble(), .. encoding.GetBytes("bowler,arrowsBoard\nZoë,10\n")];
        var item = Assert.IsType<FeedItem.ShotRead>(Assert.Single(CsvShots.Read(new MemoryStream(bytes), "shots.csv", TestLane.Settings)));
        Assert.Equal("Zoë", item.Bowler);
    }

    [Fact]
    public void Read_EmptyCells_AreNotMeasured()
    {
        var shot = Assert.Single(FeedItems.Read("time,arrowsBoard,speedMph,speedAt,hand\n,,16.5,,\n").Shots());
        Assert.Empty(shot.Crossings);
        Assert.Null(shot.Time);
        Assert.Equal(SpeedPlace.Unknown, shot.Speed!.Value.Place);
    }

    [Fact]
    public void Read_TimeWithoutOffset_IsKeptWithOffsetZero()
    {
        var shot = Assert.Single(FeedItems.Read("time,arrowsBoard\n2026-03-01 18:05,10\n").Shots());
        Assert.Equal(new DateTimeOffset(2026, 3, 1, 18, 5, 0, TimeSpan.Zero), shot.Time);
    }

    [Fact]
    public void Read_EmptyLinesAndRowsOfEmptyCells_AreNoShots()
    {
        Assert.Single(FeedItems.Read("\n\narrowsBoard,note\n\n,\n10,\n\n,\n").Shots());
    }

    [Fact]
    public void Read_UnknownColumn_IsSaidOnceAndRowsAreRead()
    {
        var items = FeedItems.Read("arrowBoard,boardAt15,weather\n1,10,dry\n2,11,dry\n");
        Assert.Equal(2, items.Shots().Count);
        Assert.Equal(2, items.Problems().Count);
        Assert.StartsWith(
            "shots.csv:1: arrowBoard: found an unknown column, which is not read; allowed: arrowsBoard?", items.Problems()[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Read_BadCells_AreAllSaidAndTheRestGoesOn()
    {
        var items = FeedItems.Read("time,arrowsBoard,speedMph,pins\nx,NaN,99,11\n,10,17,9\n");
        Assert.Equal(4, items.Problems().Count);
        Assert.All(items.Problems(), problem => Assert.StartsWith("shots.csv:2: ", problem, StringComparison.Ordinal));
        Assert.Equal(10, Assert.Single(items.Shots()).BoardAt(15));
    }

    [Fact]
    public void Read_UnclosedQuote_LosesOnlyItsOwnLine()
    {
        var rows = string.Concat(Enumerable.Range(1, 200).Select(i => $"{i % 30},ok\n"));
        var items = FeedItems.Read("arrowsBoard,note\n5,\"never closed\n" + rows);
        Assert.Equal(200, items.Shots().Count);
        Assert.StartsWith("shots.csv:2: found a quotation mark that is never closed", Assert.Single(items.Problems()), StringComparison.Ordinal);
        Assert.Equal(3, items.OfType<FeedItem.ShotRead>().First().Line);
    }

    [Fact]
    public void Read_UnclosedQuoteBeforeAQuotedRow_LosesOnlyItsOwnLine()
    {
        var items = FeedItems.Read("arrowsBoard,note\n5,\"never closed\n6,ok\n7,\"quoted\"\n8,ok\n");
        Assert.Equal([6.0, 7.0, 8.0], items.Shots().Select(shot => shot.BoardAt(15)!.Value));
        Assert.StartsWith("shots.csv:2: ", Assert.Single(items.Problems()), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_LineOfTenMegabytes_IsLeftOutInBoundedMemory()
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        using var text = new LongLine("arrowsBoard,note\n5,", 10 * 1024 * 1024, "\n6,ok\n");
        var items = CsvShots.Read(text, "shots.csv", TestLane.Settings).ToList();
        Assert.Equal(6, Assert.Single(items.Shots()).BoardAt(15));
        Assert.Equal(
            "shots.csv:2: found a line of more than 1048576 characters; it was left out; allowed: one line a shot", Assert.Single(items.Problems()));

        // The buffer doubles up to 1.1 Mi characters of 2 bytes: less than 5 MB in all, whatever the length of the line.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 8_000_000);
    }

    [Fact]
    public void Read_ReaderThatFails_SaysSoAfterWhatWasRead()
    {
        using var stream = new FailingStream("arrowsBoard\n10\n11\n"u8.ToArray());
        var items = CsvShots.Read(stream, "shots.csv", TestLane.Settings).ToList();
        Assert.Equal(2, items.Shots().Count);
        Assert.Equal("shots.csv: found a file that cannot be read (the stick was pulled out); allowed: a shot file that can be read", items.Problems().Single());
    }

    [Fact]
    public async Task ReadAsync_File_GivesTheSameAsRead()
    {
        var path = Path.GetTempFileName();
        await File.WriteAllTextAsync(path, EveryColumn, TestContext.Current.CancellationToken);
        var feed = new CsvFileFeed(path, TestLane.Settings);
        var items = new List<FeedItem>();
        await foreach (var item in feed.ReadAsync(TestContext.Current.CancellationToken))
        {
            items.Add(item);
        }

        Assert.Equal(FeedItems.Read(EveryColumn), items);
        Assert.Equal(items, feed.Read());
        File.Delete(path);
        Assert.Equal($"{path}: found no such file; allowed: the path of a shot file", feed.Read().Problems().Single());
    }

    private sealed class LongLine(string before, int length, string after) : TextReader
    {
        private long _at;

        public override int Read(char[] buffer, int index, int count) => Read(buffer.AsSpan(index, count));

        public override int Read(Span<char> buffer)
        {
            var count = 0;
            while (count < buffer.Length && _at < before.Length + length + after.Length)
            {
                buffer[count++] = _at < before.Length ? before[(int)_at]
                    : _at < before.Length + length ? '1' : after[(int)(_at - before.Length - length)];
                _at++;
            }

            return count;
        }
    }

    private sealed class FailingStream(byte[] bytes) : MemoryStream(bytes)
    {
        public override int Read(byte[] buffer, int offset, int count) =>
            Position < Length ? base.Read(buffer, offset, count) : throw new IOException("the stick was pulled out");

        public override int Read(Span<byte> buffer) => Position < Length ? base.Read(buffer) : throw new IOException("the stick was pulled out");
    }
}
