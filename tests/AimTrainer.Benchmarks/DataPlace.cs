using AimTrainer.Store.Sqlite;

namespace AimTrainer.Benchmarks;

/// <summary>A data folder for measuring, gone afterwards. It must lie on a disk, not in memory.</summary>
internal sealed class DataPlace : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("aimtrainer-benchmark-").FullName;

    /// <summary>Opens the record in it.</summary>
    public (DataFolder Folder, SqliteSessionStore Store) Open()
    {
        var folder = DataFolder.Open(Folder);
        return (folder, SqliteSessionStore.Open(folder));
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
