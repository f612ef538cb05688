using System.Runtime.CompilerServices;

namespace AimTrainer.Domain.Tests;

/// <summary>Files beside the tests.</summary>
internal static class TestFiles
{
    /// <summary>A shipped file of the drills folder, by its name without ending.</summary>
    public static string Drill(string name) => Path.Combine(AppContext.BaseDirectory, "drills", name + ".json");

    /// <summary>Every shipped drill, by its name without ending.</summary>
    public static IReadOnlyList<string> ShippedDrills() =>
        [.. Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "drills"), "*.json")
            .Select(path => Path.GetFileNameWithoutExtension(path)).Where(name => name != "drill.schema").Order(StringComparer.Ordinal)];

    /// <summary>Every bad drill.</summary>
    public static IReadOnlyList<string> BadDrills() =>
        [.. Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "Drills", "bad-drills"), "*.json").Order(StringComparer.Ordinal)];

    /// <summary>A document of the docs folder.</summary>
    public static string Doc(string name) => Path.Combine(AppContext.BaseDirectory, "docs", name);

    /// <summary>The folder of the source file that calls this, to write golden files to.</summary>
    public static string FolderOfCaller([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
