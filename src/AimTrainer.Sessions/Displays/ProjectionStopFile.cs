using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>
/// Where it is kept that projection is stopped: a small file in the data folder, there while it is. So it outlives the host, and every
/// program that works on the folder sees it. A file that cannot be read counts as a stop: dark is the safe side.
/// </summary>
/// <param name="dataFolder">The folder of the record.</param>
public sealed class ProjectionStopFile(string dataFolder)
{
    /// <summary>The file.</summary>
    public string Name { get; } = Path.Combine(dataFolder, "projection-stop.json");

    /// <summary>When it was written; the least time there is when it is not there.</summary>
    public DateTime WrittenAt => File.Exists(Name) ? File.GetLastWriteTimeUtc(Name) : DateTime.MinValue;

    /// <summary>What it says.</summary>
    public ProjectionState Read()
    {
        try
        {
            return File.Exists(Name)
                ? JsonSerializer.Deserialize<ProjectionState>(File.ReadAllBytes(Name), DomainJson.Options) is { Stopped: true } kept ? kept : Unreadable()
                : ProjectionState.Free;
        }
        catch (FileNotFoundException)
        {
            return ProjectionState.Free;
        }
        catch (Exception exception) when (exception is JsonException or IOException or UnauthorizedAccessException)
        {
            return Unreadable();
        }
    }

    /// <summary>Keeps it; on the disk when this returns.</summary>
    /// <returns>Null, or why it could not be kept.</returns>
    public string? Write(ProjectionState state)
    {
        var beside = $"{Name}.{Guid.NewGuid():n}.new";
        try
        {
            if (!state.Stopped)
            {
                File.Delete(Name);
                return null;
            }

            Directory.CreateDirectory(dataFolder);
            using (var stream = new FileStream(beside, FileMode.CreateNew, FileAccess.Write))
            {
                JsonSerializer.Serialize(stream, state, DomainJson.Options);
                stream.Flush(flushToDisk: true);
            }

            File.Move(beside, Name, overwrite: true);
            return null;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            TryDelete(beside);
            return $"{Name}: {exception.Message.TrimEnd('.')}";
        }
    }

    private static void TryDelete(string file)
    {
        try
        {
            File.Delete(file);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // What is left lies there and harms nobody.
        }
    }

    private ProjectionState Unreadable() => new(true, File.Exists(Name) ? new DateTimeOffset(File.GetLastWriteTimeUtc(Name), TimeSpan.Zero) : null, null);
}
