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

    /// <summary>The command line that starts a drill, for whoever is told to throw it.</summary>
    public static string CommandOf(string id) => $"aimtrainer run --drill {id}";

    /// <summary>The file of a drill, or null. The id is looked for in the list of files, so that no id leads out of the folders.</summary>
    public string? FileOf(string id) => Files().FirstOrDefault(file => Path.GetFileNameWithoutExtension(file) == id);

    /// <summary>A drill from its file. A file that cannot be read is a problem like any other: it costs that drill, not the list.</summary>
    public static FileRead<DrillSource> Read(string file)
    {
        try
        {
            return Read(file, File.ReadAllBytes(file));
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return new FileRead<DrillSource>(null, [new FileProblem(file, 0, "", $"a file that cannot be read ({exception.Message})", "a drill file that can be read")]);
        }
    }

    /// <summary>A drill from the bytes of its file.</summary>
    /// <param name="fileName">The file, for messages.</param>
    /// <param name="utf8">The whole file.</param>
    public static FileRead<DrillSource> Read(string fileName, byte[] utf8)
    {
        var read = DrillReader.Read(fileName, utf8);
        return new FileRead<DrillSource>(
            read.Value is { } drill ? new DrillSource(drill, DrillHash.Of(utf8), Encoding.UTF8.GetString(utf8)) : null, read.Problems);
    }

    /// <summary>Keeps a drill of the user's own, whole or not at all; one of the same id is replaced, a shipped one hidden by it.</summary>
    /// <returns>The file.</returns>
    /// <exception cref="InvalidOperationException">There is no folder for own drills.</exception>
    /// <exception cref="IOException">The folder cannot be written.</exception>
    public string Save(DrillSource drill)
    {
        var folder = ownFolder ?? throw new InvalidOperationException("there is no folder for own drills");
        Directory.CreateDirectory(folder);

        // The reader lets only lower-case letters, digits and hyphens be an id, so that it names a file in this folder and no other.
        var file = Path.Combine(folder, $"{drill.Script.Id}.json");
        var beside = $"{file}.{Guid.NewGuid():n}.new";
        File.WriteAllText(beside, drill.Json);
        File.Move(beside, file, overwrite: true);
        return file;
    }

    /// <summary>Deletes a drill of the user's own; a shipped one of that id is seen again.</summary>
    /// <returns>Whether there was one.</returns>
    /// <exception cref="IOException">The folder cannot be written.</exception>
    public bool Delete(string id)
    {
        if (ownFolder is null || !Directory.Exists(ownFolder) || DrillsIn(ownFolder).FirstOrDefault(file => Path.GetFileNameWithoutExtension(file) == id) is not { } own)
        {
            return false;
        }

        File.Delete(own);
        return true;
    }

    private static IEnumerable<string> DrillsIn(string folder) =>
        Directory.EnumerateFiles(folder, "*.json").Where(file => !file.EndsWith(".schema.json", StringComparison.Ordinal)).Order(StringComparer.Ordinal);
}
