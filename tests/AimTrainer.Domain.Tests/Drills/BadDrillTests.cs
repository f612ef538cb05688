using System.Text;

namespace AimTrainer.Domain.Tests;

/// <summary>
/// Every bad drill's messages, word for word. After a wanted change of words: run the tests once with the environment variable
/// AIMTRAINER_WRITE_GOLDEN=1 (that run still fails: it compares with the old words), then read the difference of bad-drills.golden.txt before keeping it.
/// </summary>
public sealed class BadDrillTests(DrillSchema schema) : IClassFixture<DrillSchema>
{
    private const string Golden = "bad-drills.golden.txt";

    /// <summary>What a schema cannot say: rules between values, names that must differ, bytes below JSON.</summary>
    private static readonly string[] BeyondSchema =
    [
        "aims-name-twice", "compare-ball-twice", "compare-most-below-good", "bands-hold-after-not", "bands-name-twice", "bands-not-tightest-first", "block-name-twice",
        "feedback-fading-rises", "key-twice", "key-twice-deep", "ladder-hits-and-misses", "ladder-hits-over-last",
        "ladder-outside-limits", "ladder-rises", "ladder-start-not-in-list", "limits-crossed", "line-same-distance",
        "line-wrong-order", "name-with-escape-code", "start-outside-limits", "until-width-of-fixed", "width-missing",
    ];

    public static IEnumerable<TheoryDataRow<string>> Files() => TestFiles.BadDrills().Select(path => new TheoryDataRow<string>(Path.GetFileNameWithoutExtension(path)));

    [Fact]
    public void Read_EveryBadDrill_SaysExactlyTheGoldenMessages()
    {
        var said = new StringBuilder();
        foreach (var (name, bytes) in Committed().Concat(MadeDrills.All()))
        {
            var read = DrillReader.Read(name, bytes);
            said.Append("== ").Append(name).Append('\n');
            Assert.Null(read.Value);
            Assert.NotEmpty(read.Problems);
            foreach (var problem in read.Problems)
            {
                said.Append(problem).Append('\n');
            }
        }

        if (Environment.GetEnvironmentVariable("AIMTRAINER_WRITE_GOLDEN") == "1")
        {
            File.WriteAllText(Path.Combine(TestFiles.FolderOfCaller(), Golden), said.ToString());
        }

        var golden = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Drills", Golden));
        Assert.Equal(golden.Split('\n'), said.ToString().Split('\n'));
    }

    [Fact]
    public void Read_BadDrills_AreMany() => Assert.InRange(TestFiles.BadDrills().Count, 45, int.MaxValue);

    [Fact]
    public void Read_LargestFileOfSmallestValues_StaysWithinTwoHundredMegabytes()
    {
        var bytes = Encoding.UTF8.GetBytes($"[{string.Concat(Enumerable.Repeat("1,", (JsonFile.MostBytes / 2) - 2))}1]");
        var before = GC.GetAllocatedBytesForCurrentThread();
        DrillReader.Read("f", bytes);

        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 200_000_000);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Schema_BadDrill_RefusesItUnlessItCannot(string name)
    {
        var bytes = File.ReadAllBytes(TestFiles.BadDrills().Single(path => Path.GetFileNameWithoutExtension(path) == name));
        bool refused;
        try
        {
            refused = schema.Errors(bytes).Count > 0;
        }
        catch (Exception notJson) when (notJson is System.Text.Json.JsonException or InvalidOperationException)
        {
            refused = true;
        }

        Assert.Equal(!BeyondSchema.Contains(name), refused);
    }

    private static IEnumerable<(string Name, byte[] Bytes)> Committed() =>
        TestFiles.BadDrills().Select(path => (Path.GetFileName(path), File.ReadAllBytes(path)));
}
