using System.Text.Json;
using AimTrainer.Sessions;

namespace AimTrainer.Store;

/// <summary>How a center's sending to the chain stands, beside its record. What the chain is to erase is in the one list of <see cref="Erasures"/>.</summary>
/// <param name="folder">The data folder.</param>
public sealed class CenterFiles(string folder)
{
    private string StateFile => Path.Combine(folder, "sync-state.json");

    /// <summary>How the sending stood when it was last noted; null when it never was.</summary>
    /// <exception cref="StoreUnavailableException">The file holds something else.</exception>
    public SyncState? ReadState() => Read<SyncState>(StateFile);

    /// <summary>Notes how the sending stands.</summary>
    public void Write(SyncState state) => Write(StateFile, state);

    private static T? Read<T>(string file)
        where T : class
    {
        try
        {
            return File.Exists(file) ? JsonSerializer.Deserialize<T>(File.ReadAllBytes(file), SyncJson.Options) : null;
        }
        catch (JsonException exception)
        {
            throw new StoreUnavailableException($"{file}: is not what this program writes there ({exception.Message.TrimEnd('.')}). Move it away", exception);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new StoreUnavailableException($"{file}: cannot be read. (The system says: {exception.Message.TrimEnd('.')})", exception);
        }
    }

    private static void Write<T>(string file, T value)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            var beside = $"{file}.{Guid.NewGuid():n}.new";
            using (var stream = new FileStream(beside, FileMode.CreateNew, FileAccess.Write))
            {
                JsonSerializer.Serialize(stream, value, SyncJson.Options);
                stream.Flush(flushToDisk: true);
            }

            File.Move(beside, file, overwrite: true);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new StoreUnavailableException($"{file}: cannot be written. (The system says: {exception.Message.TrimEnd('.')})", exception);
        }
    }
}
