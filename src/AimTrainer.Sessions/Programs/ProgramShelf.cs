using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>The programs that can be named by their id: those of the user's own folder, then the shipped ones.</summary>
/// <param name="ownFolder">The folder of the user's own programs, which need not exist; null for none.</param>
/// <param name="drills">The drills that programs name.</param>
public sealed class ProgramShelf(string? ownFolder, DrillShelf drills)
{
    private static string ShippedFolder => Path.Combine(AppContext.BaseDirectory, "drills", "programs");

    /// <summary>All files, each id once: one's own comes before a shipped one of the same name.</summary>
    public IReadOnlyList<string> Files()
    {
        var own = ownFolder is not null && Directory.Exists(ownFolder) ? ProgramsIn(ownFolder) : [];
        return [.. own.Concat(Directory.Exists(ShippedFolder) ? ProgramsIn(ShippedFolder) : []).DistinctBy(Path.GetFileName)];
    }

    /// <summary>Whether a file came with the program.</summary>
    public static bool IsShipped(string file) => Path.GetDirectoryName(file) == ShippedFolder;

    /// <summary>The file of an id; null when there is none.</summary>
    public string? FileOf(string id) => Files().FirstOrDefault(file => Path.GetFileNameWithoutExtension(file) == id);

    /// <summary>The program of an id; null when there is none, or it has mistakes.</summary>
    public ProgramScript? Find(string id) => FileOf(id) is { } file && BytesOf(file) is { } bytes ? Read(file, bytes).Value : null;

    /// <summary>Every program without mistakes.</summary>
    public IReadOnlyList<ProgramScript> All() => [.. Files().Select(file => BytesOf(file) is { } bytes ? Read(file, bytes).Value : null).OfType<ProgramScript>()];

    /// <summary>Reads a program, or everything that is wrong with it.</summary>
    /// <param name="fileName">The file as the user named it.</param>
    /// <param name="utf8">The whole file.</param>
    public FileRead<ProgramScript> Read(string fileName, byte[] utf8) => ProgramReader.Read(fileName, utf8, Drill);

    private DrillScript? Drill(string id) =>
        drills.FileOf(id) is { } file && BytesOf(file) is { } bytes ? DrillReader.Read(file, bytes).Value : null;

    /// <summary>A file may be deleted between the list and the look.</summary>
    private static byte[]? BytesOf(string file)
    {
        try
        {
            return File.ReadAllBytes(file);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static IEnumerable<string> ProgramsIn(string folder) =>
        Directory.EnumerateFiles(folder, "*.json").Where(file => !file.EndsWith(".schema.json", StringComparison.Ordinal)).Order(StringComparer.Ordinal);
}
