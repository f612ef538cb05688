using System.Data.Common;
using Microsoft.Data.Sqlite;

namespace AimTrainer.Store.Sqlite;

/// <summary>One statement, parsed once and run many times.</summary>
internal sealed class PreparedCommand : IDisposable
{
    private readonly SqliteCommand _command;

    /// <summary>Prepares a statement.</summary>
    /// <param name="connection">Where it runs.</param>
    /// <param name="sql">The statement; parameter <c>@name</c> for each name.</param>
    /// <param name="names">Its parameters, in the order in which values are given.</param>
    public PreparedCommand(SqliteConnection connection, string sql, IEnumerable<string> names)
    {
        _command = connection.CreateCommand();
        _command.CommandText = sql;
        foreach (var name in names)
        {
            _command.Parameters.Add(new SqliteParameter("@" + name, null));
        }

        _command.Prepare();
    }

    /// <summary>Runs it.</summary>
    /// <returns>How many rows it changed.</returns>
    public int Execute(params ReadOnlySpan<object?> values)
    {
        Bind(values);
        return _command.ExecuteNonQuery();
    }

    /// <summary>Runs it and gives the first row of its answer.</summary>
    public T? First<T>(Func<DbDataReader, T> read, params ReadOnlySpan<object?> values)
        where T : class
    {
        Bind(values);
        using var reader = _command.ExecuteReader();
        return reader.Read() ? read(reader) : null;
    }

    /// <inheritdoc/>
    public void Dispose() => _command.Dispose();

    private void Bind(ReadOnlySpan<object?> values)
    {
        for (var i = 0; i < values.Length; i++)
        {
            _command.Parameters[i].Value = values[i] ?? DBNull.Value;
        }
    }
}
