using System.Data.Common;
using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>
/// The statements that keep a step. They are gathered and sent together, so that a step costs one way to the server and back, and its
/// commit another, however far away the server is.
/// </summary>
internal sealed class PostgresStatements : StepStatements
{
    /// <summary>Past this many statements what was gathered is sent, so that neither side holds much.</summary>
    private const int MostGathered = 500;

    private static readonly string[] Texts = [.. StepStatement.All.Select(Positional)];

    private readonly PostgresRecordDatabase? _database;
    private readonly List<(long Session, long Sequence)> _steps = [];
    private NpgsqlConnection _connection;
    private NpgsqlTransaction? _transaction;
    private NpgsqlBatch _batch;

    /// <summary>Takes over a connection.</summary>
    public PostgresStatements(NpgsqlConnection connection, PostgresRecordDatabase database)
        : this(connection) => _database = database;

    private PostgresStatements(NpgsqlConnection connection)
    {
        _connection = connection;
        _batch = new NpgsqlBatch(connection);
    }

    /// <summary>Statements in a transaction of somebody else, who keeps the connection.</summary>
    public static PostgresStatements Inside(NpgsqlConnection connection) => new(connection);

    /// <inheritdoc/>
    public override void Begin() => _transaction = _connection.BeginTransaction();

    /// <inheritdoc/>
    public override void Commit()
    {
        var number = Flush();
        if (number is { } transaction)
        {
            Commit(_transaction!, new Doubt(transaction, [.. _steps], null));
        }
        else
        {
            _transaction!.Commit();
        }

        _transaction = null;
        _steps.Clear();
    }

    /// <inheritdoc/>
    public override void RollBack()
    {
        _steps.Clear();
        _batch.BatchCommands.Clear();
        using var transaction = _transaction;
        _transaction = null;
        if (_connection.FullState.HasFlag(System.Data.ConnectionState.Broken) || _connection.State != System.Data.ConnectionState.Open)
        {
            return;
        }

        transaction?.Rollback();
    }

    /// <inheritdoc/>
    public override void Run(StepStatement statement, params ReadOnlySpan<object?> values)
    {
        var command = new NpgsqlBatchCommand(Texts[statement.Index]);
        Bind(command.Parameters, values);
        _batch.BatchCommands.Add(command);
        if (statement == StepStatement.AddStep)
        {
            _steps.Add(((long)values[0]!, (long)values[1]!));
        }

        if (_batch.BatchCommands.Count >= MostGathered)
        {
            Send();
        }
    }

    /// <inheritdoc/>
    public override int RunNow(StepStatement statement, params ReadOnlySpan<object?> values)
    {
        Send();
        using var command = Command(statement, values);
        return command.ExecuteNonQuery();
    }

    /// <inheritdoc/>
    public override T? First<T>(StepStatement statement, Func<DbDataReader, T> read, params ReadOnlySpan<object?> values)
        where T : class
    {
        Send();
        using var command = Command(statement, values);
        using var reader = command.ExecuteReader();
        return reader.Read() ? read(reader) : null;
    }

    /// <inheritdoc/>
    public override void Change(Action<RecordContext> change, string? newSession)
    {
        using var transaction = _connection.BeginTransaction();
        using (var record = PostgresDatabase.ContextOver(_connection))
        {
            record.Database.UseTransaction(transaction);
            change(record);
        }

        using var number = new NpgsqlCommand("SELECT pg_current_xact_id()::text", _connection);
        Commit(transaction, new Doubt(ulong.Parse((string)number.ExecuteScalar()!, CultureInfo.InvariantCulture), [], newSession));
    }

    /// <summary>Sends what was gathered.</summary>
    /// <returns>The server's number of the transaction; null when nothing was gathered.</returns>
    public ulong? Flush()
    {
        if (_batch.BatchCommands.Count == 0 && _steps.Count == 0)
        {
            return null;
        }

        _batch.BatchCommands.Add(new NpgsqlBatchCommand("SELECT pg_current_xact_id()::text"));
        var number = (string)_batch.ExecuteScalar()!;
        _batch.BatchCommands.Clear();
        return ulong.Parse(number, CultureInfo.InvariantCulture);
    }

    /// <inheritdoc/>
    public override void Dispose()
    {
        _batch.Dispose();
        if (_database is not null)
        {
            _transaction?.Dispose();
            WriterLock.Release(_connection);
            _connection.Dispose();
        }
    }

    private static string Positional(StepStatement statement)
    {
        var sql = statement.Sql;

        // The longest name first: @session_key before @session.
        foreach (var (name, index) in statement.Names.Select((name, index) => (name, index)).OrderByDescending(pair => pair.name.Length))
        {
            sql = sql.Replace("@" + name, string.Create(CultureInfo.InvariantCulture, $"${index + 1}"), StringComparison.Ordinal);
        }

        return sql;
    }

    private static void Bind(NpgsqlParameterCollection parameters, ReadOnlySpan<object?> values)
    {
        foreach (var value in values)
        {
            parameters.Add(new NpgsqlParameter { Value = value ?? DBNull.Value });
        }
    }

    private NpgsqlCommand Command(StepStatement statement, ReadOnlySpan<object?> values)
    {
        var command = new NpgsqlCommand(Texts[statement.Index], _connection);
        Bind(command.Parameters, values);
        return command;
    }

    private void Send()
    {
        if (_batch.BatchCommands.Count > 0)
        {
            _batch.ExecuteNonQuery();
            _batch.BatchCommands.Clear();
        }
    }

    private void Commit(NpgsqlTransaction transaction, Doubt doubt)
    {
        try
        {
            transaction.Commit();
        }
        catch (NpgsqlException broken) when (PostgresFault.IsConnection(broken) && _database is not null)
        {
            var fresh = _database.AfterBrokenCommit(doubt, broken);
            _connection.Dispose();
            _connection = fresh;
            _batch.Dispose();
            _batch = new NpgsqlBatch(fresh);
        }
    }
}
