using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>A small JSON file that only its owner may read, written whole or not at all.</summary>
/// <param name="path">The file.</param>
internal sealed class SecretFile(string path)
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>The file.</summary>
    public string Name => path;

    /// <summary>When it was last written; the least time there is when it is not there.</summary>
    public DateTime WrittenAt => File.Exists(path) ? File.GetLastWriteTimeUtc(path) : DateTime.MinValue;

    /// <summary>What it holds, or null when it is not there.</summary>
    /// <exception cref="InvalidDataException">It holds something else.</exception>
    public T? Read<T>()
        where T : class
    {
        try
        {
            return File.Exists(path) ? JsonSerializer.Deserialize<T>(File.ReadAllBytes(path), DomainJson.Options) : null;
        }
        catch (JsonException exception)
        {
            throw new InvalidDataException($"{path}: is not what this program writes there ({exception.Message}). Move it away and set it anew", exception);
        }
    }

    /// <summary>Puts it in place of what was there; on the disk when this returns.</summary>
    public void Write<T>(T value)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        var beside = $"{path}.{Guid.NewGuid():n}.new";
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = OwnerOnly;
        }

        using (var stream = new FileStream(beside, options))
        {
            JsonSerializer.Serialize(stream, value, DomainJson.Options);
            stream.Flush(flushToDisk: true);
        }

        File.Move(beside, path, overwrite: true);
    }

    /// <summary>Deletes it.</summary>
    /// <returns>Whether it was there.</returns>
    public bool Delete()
    {
        var there = File.Exists(path);
        File.Delete(path);
        return there;
    }
}
