using System.Text;
using AimTrainer.Sessions;
using Microsoft.Extensions.Time.Testing;

namespace AimTrainer.Feeds.Tests;

public sealed class FollowedCsvFeedTests : IDisposable
{
    private const string Head = "arrowsBoard,note\n";
    private const string TwoRows = "10.5,\"two\r\nlines, Zoë\"\r\n11,\"say \"\"yes\"\"\"\r\n";

    private readonly string _folder = Directory.CreateTempSubdirectory("aimtrainer-follow").FullName;

    private string FilePath => Path.Combine(_folder, "shots.csv");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Poll_EverySplitOfAnAppend_GivesTheSameShots()
    {
        var append = Encoding.UTF8.GetBytes(TwoRows);
        for (var split = 0; split <= append.Length; split++)
        {
            File.WriteAllText(FilePath, Head);
            var feed = Feed();
            var items = Poll(feed);
            Append(append.AsSpan(0, split));
            items.AddRange(Poll(feed));
            Append(append.AsSpan(split));
            items.AddRange(Poll(feed));
            AssertTwoRows(items);
        }
    }

    public static TheoryData<string> Encodings => ["utf-8", "utf-8-bom", "utf-16-le", "utf-16-be"];

    [Theory]
    [MemberData(nameof(Encodings))]
    public void Poll_ByteByByte_GivesTheSameShots(string name)
    {
        Encoding encoding = name switch
        {
            "utf-8" => new UTF8Encoding(false),
            "utf-8-bom" => new UTF8Encoding(true),
            "utf-16-le" => new UnicodeEncoding(false, true),
            _ => new UnicodeEncoding(true, true),
        };
        File.WriteAllBytes(FilePath, []);
        var feed = Feed();
        var items = Poll(feed);
        byte[] bytes = [.. encoding.GetPreamble(), .. encoding.GetBytes(Head + TwoRows)];
        foreach (var value in bytes)
        {
            Append([value]);
            items.AddRange(Poll(feed));
        }

        AssertTwoRows(items);
    }

    [Fact]
    public void Poll_HalfWrittenLastLine_IsWaitedFor()
    {
        File.WriteAllText(FilePath, Head + "10,a\n1");
        var feed = Feed();
        Assert.Equal([10.0], Boards(Poll(feed)));
        Assert.Empty(Poll(feed));
        Append("2,b\n"u8);
        Assert.Equal([12.0], Boards(Poll(feed)));
    }

    [Fact]
    public void Poll_FileMissingAtFirst_IsWaitedForAndReadFromItsTop()
    {
        var feed = Feed(new FollowSettings { FromEnd = true });
        Assert.Empty(Poll(feed));
        File.WriteAllText(FilePath, Head + "10,a\n");
        Assert.Equal([10.0], Boards(Poll(feed)));
    }

    [Fact]
    public void Poll_FromEnd_PassesOverWhatIsThereAndKeepsLines()
    {
        File.WriteAllText(FilePath, Head + "10,a\n11,b\n12");
        var feed = Feed(new FollowSettings { FromEnd = true });
        Assert.Empty(Poll(feed));
        Append(",c\n13,d\n"u8);
        var items = Poll(feed);
        Assert.Equal([12.0, 13.0], Boards(items));
        Assert.Equal([4, 5], items.OfType<FeedItem.ShotRead>().Select(item => item.Line));
    }

    [Fact]
    public void Poll_FromEndWithHeadingsThatCannotBeRead_SaysSo()
    {
        File.WriteAllText(FilePath, "speedMph,pins\n");
        Assert.Single(Poll(Feed(new FollowSettings { FromEnd = true })));
    }

    [Fact]
    public void Poll_Truncated_ReadsTheNewHeadings()
    {
        File.WriteAllText(FilePath, Head + "10,a\n11,b\n");
        var feed = Feed();
        Poll(feed);
        File.WriteAllText(FilePath, "note,boardAt40\nx,7\n");
        Assert.Equal(7, Assert.Single(Poll(feed).Shots()).BoardAt(40));
    }

    [Fact]
    public void Poll_ReplacedByALongerFileOfTheSameHeadings_ReadsItFromItsTop()
    {
        File.WriteAllText(FilePath, Head + "10,a\n11,b\n");
        var feed = Feed();
        Poll(feed);
        File.Move(FilePath, FilePath + ".1");
        File.WriteAllText(FilePath, Head + "20,a\n21,b\n22,c\n23,d\n");
        Assert.Equal([20.0, 21.0, 22.0, 23.0], Boards(Poll(feed)));
    }

    [Fact]
    public void Poll_DeletedAndMadeAnewWithTheSameBytes_ReadsThemAgain()
    {
        File.WriteAllText(FilePath, Head + "10,a\n");
        var feed = Feed();
        Poll(feed);
        File.Delete(FilePath);
        Assert.Empty(Poll(feed));
        File.WriteAllText(FilePath, Head + "10,a\n");
        Assert.Equal([10.0], Boards(Poll(feed)));
    }

    [Fact]
    public void Poll_QuoteNeverClosed_IsGivenUpWhenNobodyWritesAnyMore()
    {
        File.WriteAllText(FilePath, Head + "10,\"open\n11,b\n12,c\n");
        var feed = Feed(new FollowSettings { LooksBeforeQuoteIsGivenUp = 3 });
        Assert.Empty(Poll(feed));
        Assert.Empty(Poll(feed));
        Assert.Empty(Poll(feed));
        var items = Poll(feed);
        Assert.Equal([11.0, 12.0], Boards(items));
        Assert.StartsWith($"{FilePath}:2: found a quotation mark that is never closed", Assert.Single(items.Problems()), StringComparison.Ordinal);
        Append("13,d\n"u8);
        Assert.Equal([13.0], Boards(Poll(feed)));
    }

    [Fact]
    public void Poll_ManyRows_GivesThemAllInSeveralLooks()
    {
        var rows = new StringBuilder(Head);
        for (var i = 0; i < 100_000; i++)
        {
            rows.Append(System.Globalization.CultureInfo.InvariantCulture, $"{(i % 400) / 10.0},row {i}\n");
        }

        File.WriteAllText(FilePath, rows.ToString());
        var feed = Feed();
        var items = new List<FeedItem>();
        var looks = 1;
        while (feed.Poll(items))
        {
            looks++;
        }

        Assert.InRange(looks, 2, 10);
        Assert.Equal(FeedItems.Read(rows.ToString()).Shots(), items.Shots());
    }

    [Fact]
    public void Poll_PathIsAFolder_IsSaidOnce()
    {
        Directory.CreateDirectory(FilePath);
        var feed = Feed();
        Assert.Single(Poll(feed).Problems());
        Assert.Empty(Poll(feed));
    }

    [Fact]
    public async Task ReadAsync_AppendedLater_ComesAfterTheInterval()
    {
        var time = new FakeTimeProvider();
        await File.WriteAllTextAsync(FilePath, Head + "10,a\n", TestContext.Current.CancellationToken);
        var feed = new FollowedCsvFeed(FilePath, TestLane.Settings, new FollowSettings(), time);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        await using var items = feed.ReadAsync(stop.Token).GetAsyncEnumerator(stop.Token);
        Assert.True(await items.MoveNextAsync());
        var next = items.MoveNextAsync().AsTask();
        Append("11,b\n"u8);
        Assert.False(next.IsCompleted);
        time.Advance(TimeSpan.FromMilliseconds(250));
        Assert.True(await next);
        Assert.Equal([11.0], Boards([items.Current]));
        var last = items.MoveNextAsync().AsTask();
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => last);
    }

    private static void AssertTwoRows(List<FeedItem> items)
    {
        Assert.Empty(items.Problems());
        Assert.Equal([10.5, 11.0], Boards(items));
        Assert.Equal(["two\r\nlines, Zoë", "say \"yes\""], items.Shots().Select(shot => shot.Note));
    }

    private static List<FeedItem> Poll(FollowedCsvFeed feed)
    {
        var items = new List<FeedItem>();
        feed.Poll(items);
        return items;
    }

    private static List<double> Boards(List<FeedItem> items) => [.. items.Shots().Select(shot => shot.BoardAt(15)!.Value)];

    private FollowedCsvFeed Feed(FollowSettings? follow = null) => new(FilePath, TestLane.Settings, follow ?? new FollowSettings(), new FakeTimeProvider());

    private void Append(ReadOnlySpan<byte> bytes)
    {
        using var stream = new FileStream(FilePath, FileMode.Append);
        stream.Write(bytes);
    }
}
