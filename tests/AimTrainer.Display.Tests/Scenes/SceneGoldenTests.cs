using System.Runtime.CompilerServices;
using System.Text;

namespace AimTrainer.Display.Tests;

/// <summary>
/// Every state as text. After a wanted change: run the tests once with AIMTRAINER_WRITE_GOLDEN=1 (that run still fails where it
/// differs: it compares with the old files), look at the pictures, and read the difference of the Golden folder before keeping it.
/// </summary>
public sealed class SceneGoldenTests
{
    public static TheoryData<string> States() => new(SceneStates.All().Select(state => state.Name));

    [Theory]
    [MemberData(nameof(States))]
    public void Build_State_GivesItsGoldenScenes(string name)
    {
        var state = SceneStates.All().Single(each => each.Name == name);
        Check(name, $"""
            == on the lane
            {SceneText.Write(ProjectorScene.Build(state.Projector))}
            == on a screen of 16:9
            {SceneText.Write(OverheadScene.Build(state.Overhead))}
            == words on a screen of 4:3
            {Words(SceneText.Write(OverheadScene.Build(state.Overhead with { Aspect = 4.0 / 3 })))}
            """);
    }

    [Fact]
    public void Uncalibrated_NoMap_GivesItsGoldenScene() =>
        Check("uncalibrated", SceneText.Write(NoticeScene.Uncalibrated(16.0 / 9, ThemeLibrary.Default)));

    [Fact]
    public void Golden_Files_AreThoseOfTheStates() => Assert.Equal(
        SceneStates.All().Select(state => state.Name).Append("uncalibrated").Order(StringComparer.Ordinal),
        Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "Scenes", "Golden")).Select(file => Path.GetFileNameWithoutExtension(file)).Order(StringComparer.Ordinal));

    private static string Words(string scene) => string.Join('\n', scene.Split('\n').Where(line => line.StartsWith("writing", StringComparison.Ordinal)));

    private static void Check(string name, string found)
    {
        var text = found.ReplaceLineEndings("\n").TrimEnd('\n') + "\n";
        if (Environment.GetEnvironmentVariable("AIMTRAINER_WRITE_GOLDEN") is { Length: > 0 })
        {
            File.WriteAllText(Path.Combine(FolderOfTests(), "Golden", name + ".txt"), text, new UTF8Encoding(false));
        }

        var golden = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Scenes", "Golden", name + ".txt"));
        Assert.Equal(golden.Split('\n'), text.Split('\n'));
    }

    private static string FolderOfTests([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
