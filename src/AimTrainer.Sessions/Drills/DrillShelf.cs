using System.Text;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>The drills that can be named by their id: the user's own first, then the shipped ones.</summary>
/// <param name="ownFolder">The user's own; null when there are none. It need not exist yet.</param>
public sealed class DrillShelf(string? ownFolder)
{
    private static string ShippedFolder => Path.Combine(AppContext.BaseDirectory, "drills");

    /// <summary>Every drill file, the user's own first, each id once.</summary>
    public IReadOnlyList<string> Files()
    {
        var own = ownFolder is not null && Directory.Exists(ownFolder) ? DrillsIn(ownFolder) : [];
        return [.. own.Concat(DrillsIn(ShippedFolder)).DistinctBy(Path.GetFileName)];
    }

    /// <summary>Whether a file is a shipped one.</summary>
    public static bool IsShipped(string file) => Path.GetDirectoryName(file) == ShippedFolder;

    /// <summary>The file of a drill, or null. The id is looked for in the list of files, so that no id leads out of the folders.</summary>
    public string? FileOf(string id) => Files().FirstOrDefault(file => Path.GetFileNameWithoutExtension(file) == id);

    /// <summary>A drill from the bytes of its file.</summary>
    /// <param name="fileName">The file, for messages.</param>
    /// <param name="utf8">The whole file.</param>
    public static FileRead<DrillSource> Read(string fileName, byte[] utf8)
    {
        var read = DrillReader.Read(fileName, utf8);
        return new FileRead<DrillSource>(
            read.Value is { } drill ? new DrillSource(drill, DrillHash.Of(utf8), Encoding.UTF8.GetString(utf8)) : null, read.Problems);
    }

    private static IEnumerable<string> DrillsIn(string folder) =>
        Directory.EnumerateFiles(folder, "*.json").Where(file => !file.EndsWith(".schema.json", StringComparison.Ordinal)).Order(StringComparer.Ordinal);
}
