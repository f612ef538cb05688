using AimTrainer.Sessions;
using Microsoft.Data.Sqlite;

namespace AimTrainer.Store.Sqlite;

/// <summary>A record in a SQLite file, for the writer.</summary>
/// <param name="file">The file.</param>
/// <param name="onOpened">What else to do with each new connection; for tests.</param>
internal sealed class SqliteRecordDatabase(string file, Action<SqliteConnection>? onOpened) : RecordDatabase
{
    /// <summary>About 2000 pages of log, 8 MB: seldom enough to cost little, often enough to keep the log short.</summary>
    private const int StepsBetweenCheckpoints = 256;

    /// <inheritdoc/>
    public override string Name => file;

    /// <inheritdoc/>
    public override StepStatements Open()
    {
        if (!File.Exists(file))
        {
            throw new StoreUnavailableException(
                $"{file} is gone, so nothing is kept. Put it back, or restore the last backup (aimtrainer restore)");
        }

        var connection = SqliteDatabase.OpenForWriting(file);
        onOpened?.Invoke(connection);
        return new SqliteStatements(connection);
    }

    /// <inheritdoc/>
    public override bool IsWorlds(Exception exception) => StoreFault.IsWorlds(exception);

    /// <inheritdoc/>
    public override bool IsRefusedRow(Exception exception) => StoreFault.IsRefusedRow(exception);

    /// <inheritdoc/>
    public override StoreUnavailableException Unavailable(Exception exception) => StoreFault.For(file, exception);

    /// <inheritdoc/>
    /// <remarks>
    /// A flush that failed may yet reach the disk, and only the connection that made it knows to write over it. When it fails twice
    /// in a row, a fresh one may fare better (a drive that was away).
    /// </remarks>
    public override bool KeepsConnectionAfter(Exception exception) => true;

    /// <inheritdoc/>
    public override void AfterErasure(StepStatements statements)
    {
        try
        {
            ((SqliteStatements)statements).WriteAnew();
        }
        catch (Exception exception) when (StoreFault.IsWorlds(exception))
        {
            throw new StoreUnavailableException(
                "the rows are erased, but the file could not be written anew, so bytes of them may be left in it. See to what is below; it is done once a day, "
                + $"at the next start, or when you erase once more. {StoreFault.For(file, exception).Message}",
                exception);
        }
    }

    /// <inheritdoc/>
    /// <remarks>No shot waits for a checkpoint unless it comes in meanwhile. When it fails, everything is safe in the log, which is only longer.</remarks>
    public override bool Tidy(StepStatements statements, int steps)
    {
        if (steps < StepsBetweenCheckpoints)
        {
            return false;
        }

        ((SqliteStatements)statements).Checkpoint("PASSIVE");
        return true;
    }
}
