using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Store;

/// <summary>
/// What a center keeps beside its record about the chain. Beside it and not in it, so that a record that is restored from a backup
/// does not bring back a person who was erased: erasures are carried out again whenever the record is opened for sending.
/// </summary>
/// <param name="folder">The data folder.</param>
public sealed class CenterFiles(string folder)
{
    private string StateFile => Path.Combine(folder, "sync-state.json");

    private string ErasuresFile => Path.Combine(folder, "erasures.json");

    /// <summary>How the sending stood when it was last noted; null when it never was.</summary>
    /// <exception cref="StoreUnavailableException">The file holds something else.</exception>
    public SyncState? ReadState() => Read<SyncState>(StateFile);

    /// <summary>Notes how the sending stands.</summary>
    public void Write(SyncState state) => Write(StateFile, state);

    /// <summary>All erasures, oldest first.</summary>
    /// <exception cref="StoreUnavailableException">The file holds something else.</exception>
    public ValueList<Erasure> ReadErasures() => Read<ErasureList>(ErasuresFile)?.Erasures ?? [];

    /// <summary>Keeps the erasures; on the disk when this returns.</summary>
    public void Write(ValueList<Erasure> erasures) => Write(ErasuresFile, new ErasureList(erasures));

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

    private sealed record ErasureList(ValueList<Erasure> Erasures);
}
