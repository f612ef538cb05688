using AimTrainer.Store.Sqlite;
using Microsoft.Data.Sqlite;

namespace AimTrainer.Store.Tests;

/// <summary>A held data folder with an open store.</summary>
internal sealed class OpenRecord : IDisposable
{
    public OpenRecord(string path, Action<SqliteConnection>? onOpened = null)
    {
        Folder = DataFolder.Open(path);
        try
        {
            Store = SqliteSessionStore.Open(Folder, onOpened);
        }
        catch
        {
            Folder.Dispose();
            throw;
        }
    }

    public DataFolder Folder { get; }

    public SqliteSessionStore Store { get; }

    /// <summary>The tables, past the store.</summary>
    public RecordContext Tables() => SqliteDatabase.ContextOver(SqliteDatabase.OpenForReading(Folder.DatabaseFile), owns: true);

    public void Dispose()
    {
        Store.Dispose();
        Folder.Dispose();
    }
}
