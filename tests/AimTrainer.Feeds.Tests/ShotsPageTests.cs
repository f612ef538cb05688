using System.Text;
using System.Text.RegularExpressions;

namespace AimTrainer.Feeds.Tests;

/// <summary>What <c>docs/shots.md</c> shows works, and it names every heading.</summary>
public partial class ShotsPageTests
{
    private static readonly string Page = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "shots.md"));

    [Fact]
    public void Page_Table_NamesEveryHeading()
    {
        var inTable = HeadingRow().Matches(Page).Select(row => row.Groups[1].Value).ToHashSet();
        Assert.Subset(inTable, ShotColumns.Names().ToHashSet());
    }

    [Fact]
    public void Page_ShotFile_IsRead()
    {
        var items = FeedItems.Read(Block("csv"));
        Assert.Empty(items.Problems());
        Assert.Equal(2, items.Shots().Count);
    }

    [Fact]
    public void Page_MappingFile_IsReadWithEveryKey()
    {
        var read = CsvMappingFile.Read("shots.md", Encoding.UTF8.GetBytes(Block("json")));
        Assert.Empty(read.Problems);
        Assert.Equal(6, read.Value!.Columns.Count);
        Assert.Equal((';', true, LaneEdge.Left), (read.Value.Delimiter, read.Value.DecimalComma, read.Value.BoardsCountFrom));
    }

    private static string Block(string language) => Page.Split($"```{language}\n")[1].Split("```")[0];

    [GeneratedRegex(@"^\| `([^`]+)` \|", RegexOptions.Multiline)]
    private static partial Regex HeadingRow();
}
