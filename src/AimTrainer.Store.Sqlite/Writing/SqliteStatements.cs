using System.Data.Common;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace AimTrainer.Store.Sqlite;

/// <summary>The statements that keep a step, prepared once on the connection that writes.</summary>
internal sealed class SqliteStatements : StepStatements
{
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
    public void Checkpoint(string mode) => SqliteDatabase.Execute(_connection, $"PRAGMA wal_checkpoint({mode})");

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
