using System.Net.Sockets;
using System.Text.Json;
using AimTrainer.Sessions;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>Turns what the server or the network says into what a person can act on.</summary>
internal static class PostgresFault
{
    /// <summary>Whether an exception comes from the world (server, network, disk) and not from a mistake in the program.</summary>
    public static bool IsWorlds(Exception exception) =>
        exception is JsonException or IOException or SocketException or TimeoutException
        || Cause(exception) is { } cause && (cause is not PostgresException said || IsWorlds(said.SqlState));

    /// <summary>Whether the database refused one row, and is well otherwise. Class 22 is about values, 23 about keys.</summary>
    public static bool IsRefusedRow(Exception exception) => Cause(exception) is PostgresException { SqlState: ['2', '2' or '3', ..] };

    /// <summary>Whether the connection is at fault, so that what was sent may or may not have been done.</summary>
    public static bool IsConnection(Exception exception) =>
        exception is IOException or SocketException or TimeoutException
        || Cause(exception) is { } cause && (cause is not PostgresException said || said.SqlState is ['5', '7', 'P', '0', ..] or ['0', '8', ..]);

    /// <summary>The exception for a person.</summary>
    /// <param name="name">The place, without a password.</param>
    /// <param name="exception">One for which <see cref="IsWorlds(Exception)"/> holds.</param>
    public static StoreUnavailableException For(string name, Exception exception)
    {
        var cause = Cause(exception) ?? exception;
        var words = (cause as PostgresException)?.SqlState switch
        {
            "53100" => "the server's disk is full, so nothing more is kept. Free some space there and try again",
            "53300" => "the server has too many connections, so nothing is kept. Close some, or allow more (max_connections), and try again",
            ['2', '8', ..] => "the server does not let this user in. Check the user name and the password (in ~/.pgpass or PGPASSWORD), and pg_hba.conf on the server",
            "3D000" => "there is no such database. Make it (createdb), or name another",
            "42501" => "this user may not do that there. Let the user create a schema in the database (GRANT CREATE ON DATABASE), or use another user",
            "25006" => "the server takes no changes (it is a standby, or set read-only), so nothing is kept. Name the server that takes them",
            "57P03" => "the server is starting or stopping, so nothing is kept. Wait until it runs and try again",
            ['5', '7', 'P', ..] => "the server was stopped, so nothing more is kept. Start it and try again",
            ['4', '0', ..] => "another program was at the same rows, so this was not kept. Try again",
            ['X', 'X', ..] => "the server reports damage to its data. Stop, and restore its last backup",
            null when cause is JsonException => "a step of the record cannot be read. Restore the server's last backup",
            null when cause is TimeoutException || cause.InnerException is TimeoutException => "the server did not answer in time, so nothing is kept. See that it and the network run, then try again",
            null => "the server cannot be reached, so nothing is kept. See that it and the network run, then try again",
            _ => "the server reports an error, so nothing is kept. See the server's log, then try again",
        };
        var said = cause is PostgresException server ? server.MessageText : cause.Message;
        return new StoreUnavailableException($"{name}: {words}. (The system says: {said.TrimEnd('.')})", exception);
    }

    private static bool IsWorlds(string state) => state[..2] is not ("22" or "23" or "42") || state == "42501";

    private static NpgsqlException? Cause(Exception exception) => exception switch
    {
        NpgsqlException npgsql => npgsql,
        DbUpdateException { InnerException: NpgsqlException npgsql } => npgsql,
        InvalidOperationException { InnerException: NpgsqlException npgsql } => npgsql,
        _ => null,
    };
}
