using System.Data.Common;
using AimTrainer.Sessions;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace AimTrainer.Store.Sqlite;

/// <summary>The statements that keep a step, prepared once on the connection that writes.</summary>
internal sealed class SqliteStatements : StepStatements
{
    /// <summary>Each waits for readers as long as for any lock, and shots wait meanwhile; a page's question takes less than a second.</summary>
    private const int TriesToCutTheLog = 2;

    private readonly SqliteConnection _connection;
    private readonly PreparedCommand _begin;
    private readonly PreparedCommand _commit;
    private readonly PreparedCommand[] _commands;

    /// <summary>Takes over a connection.</summary>
    public SqliteStatements(SqliteConnection connection)
    {
        _connection = connection;
        _begin = new(connection, "BEGIN IMMEDIATE", []);
        _commit = new(connection, "COMMIT", []);
        _commands = [.. StepStatement.All.Select(statement => new PreparedCommand(connection, statement.Sql, statement.Names))];
    }

    /// <summary>Moves the log into the database file.</summary>
    /// <param name="mode">SQLite's word for how: PASSIVE waits for nobody, TRUNCATE leaves no log behind.</param>
    /// <returns>Whether all of it was moved; false when somebody reads what is in the log.</returns>
    public bool Checkpoint(string mode) => SqliteDatabase.Number(_connection, $"PRAGMA wal_checkpoint({mode})") == 0;

    /// <summary>Leaves no byte of what was erased: writes the file anew and cuts its log to nothing.</summary>
    /// <exception cref="StoreUnavailableException">Somebody reads the log all the time.</exception>
    public void WriteAnew()
    {
        // secure_delete has overwritten what was freed; but when rows moved from page to page before, their old places keep what was there.
        SqliteDatabase.Execute(_connection, "VACUUM");
        for (var i = 0; !Checkpoint("TRUNCATE"); i++)
        {
            if (i == TriesToCutTheLog)
            {
                throw new StoreUnavailableException(
                    "the rows are erased, but somebody reads the record all the time, so that their bytes still lie in its log. "
                    + "Close displays and reports that follow the record, and erase once more; it is also tried again once a day and at the next start");
            }
        }
    }

    /// <inheritdoc/>
    public override void Begin() => _begin.Execute();

    /// <inheritdoc/>
    public override void Commit() => _commit.Execute();

    /// <inheritdoc/>
    public override void RollBack()
    {
        if (raw.sqlite3_get_autocommit(_connection.Handle) == 0)
        {
            SqliteDatabase.Execute(_connection, "ROLLBACK");
        }
    }

    /// <inheritdoc/>
    public override void Run(StepStatement statement, params ReadOnlySpan<object?> values) => RunNow(statement, values);

    /// <inheritdoc/>
    public override int RunNow(StepStatement statement, params ReadOnlySpan<object?> values) => _commands[statement.Index].Execute(values);

    /// <inheritdoc/>
    public override T? First<T>(StepStatement statement, Func<DbDataReader, T> read, params ReadOnlySpan<object?> values)
        where T : class => _commands[statement.Index].First(read, values);

    /// <inheritdoc/>
    public override void Change(Action<RecordContext> change, string? newSession)
    {
        using var record = SqliteDatabase.ContextOver(_connection);
        using var transaction = record.Database.BeginTransaction();
        change(record);
        transaction.Commit();
    }

    /// <inheritdoc/>
    public override void Dispose()
    {
        _begin.Dispose();
        _commit.Dispose();
        foreach (var command in _commands)
        {
            command.Dispose();
        }

        _connection.Dispose();
    }
}
