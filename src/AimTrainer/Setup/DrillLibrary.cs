using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>Finds drills for a command: by file, or by id on the shelf.</summary>
internal sealed class DrillLibrary(string? ownFolder)
{
    private readonly DrillShelf _shelf = new(ownFolder);

    /// <inheritdoc cref="DrillShelf.Files"/>
    public IReadOnlyList<string> Files() => _shelf.Files();

    /// <summary>Reads a drill by file name or id.</summary>
    /// <exception cref="UserException">There is none, or it has mistakes: each is named.</exception>
    public DrillSource Read(string fileOrId)
    {
        var file = File.Exists(fileOrId) ? fileOrId : _shelf.FileOf(fileOrId) ?? throw NotFound(fileOrId);
        var read = DrillShelf.Read(file, UserFiles.ReadAllBytes(file));
        return read.Value ?? throw UserException.Of(read.Problems);
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
}
