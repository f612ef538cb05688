using System.Text;
using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>Finds drills: by file, or by id among the user's own and the shipped ones (the user's own first).</summary>
internal sealed class DrillLibrary(string? ownFolder)
{
    private static string ShippedFolder => Path.Combine(AppContext.BaseDirectory, "drills");

    /// <summary>Every drill file that can be named by its id, the user's own first, each id once.</summary>
    public IReadOnlyList<string> Files()
    {
        var own = ownFolder is not null && Directory.Exists(ownFolder) ? DrillsIn(ownFolder) : [];
        return [.. own.Concat(DrillsIn(ShippedFolder)).DistinctBy(Path.GetFileName)];
    }

    /// <summary>Whether a file is a shipped one.</summary>
    public static bool IsShipped(string file) => Path.GetDirectoryName(file) == ShippedFolder;

    /// <summary>Reads a drill by file name or id.</summary>
    /// <exception cref="UserException">There is none, or it has mistakes: each is named.</exception>
    public DrillSource Read(string fileOrId)
    {
        var file = File.Exists(fileOrId) ? fileOrId : Files().FirstOrDefault(known => Path.GetFileNameWithoutExtension(known) == fileOrId);
        if (file is null)
        {
            throw NotFound(fileOrId);
        }

        var bytes = UserFiles.ReadAllBytes(file);
        var read = DrillReader.Read(file, bytes);
        return read.Value is { } drill
            ? new DrillSource(drill, DrillHash.Of(bytes), Encoding.UTF8.GetString(bytes))
            : throw UserException.Of(read.Problems);
    }

    private UserException NotFound(string fileOrId)
    {
        if (Directory.Exists(fileOrId))
        {
            return new UserException($"{fileOrId}: is a folder; name a drill file in it, or the id of a drill (see: aimtrainer drill list)");
        }

        var ids = Files().Select(file => Path.GetFileNameWithoutExtension(file)!).ToList();
        return Likeness.Nearest(fileOrId, ids) is { } nearest
            ? new UserException($"{fileOrId}: no such file, and no drill of that id; did you mean {nearest}? (see: aimtrainer drill list)")
            : new UserException(
                $"{(fileOrId.Length == 0 ? "(nothing)" : fileOrId)}: no such file, and no drill of that id; "
                + $"allowed: a drill file, or one of {string.Join(", ", ids)}");
    }

    private static IEnumerable<string> DrillsIn(string folder) =>
        Directory.EnumerateFiles(folder, "*.json").Where(file => !file.EndsWith(".schema.json", StringComparison.Ordinal)).Order(StringComparer.Ordinal);
}
