using System.Globalization;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>
/// Which PostgreSQL database holds a record, and how to reach it. What it shows of itself (<see cref="Name"/>) never holds the
/// password.
/// </summary>
public sealed class PostgresPlace
{
    /// <summary>What a place begins with, where it is one of several kinds.</summary>
    public const string Prefix = "postgres:";

    /// <summary>How long a new connection may take, seconds.</summary>
    private const int ConnectSeconds = 5;

    /// <summary>How long an answer may take, seconds; a shot is not kept when it takes longer.</summary>
    private const int AnswerSeconds = 15;

    private readonly NpgsqlConnectionStringBuilder _settings;

    private PostgresPlace(NpgsqlConnectionStringBuilder settings) => _settings = settings;

    /// <summary>Server, port and database, for messages.</summary>
    public string Name => string.Create(CultureInfo.InvariantCulture, $"postgres:{_settings.Host}:{_settings.Port}/{_settings.Database}");

    /// <summary>Reads a place: <c>postgres:Host=...;Database=...;Username=...</c> or <c>postgres://user@host:5432/database</c>.</summary>
    /// <param name="text">The text, with its <see cref="Prefix"/>.</param>
    /// <param name="problem">What was found and what is allowed, without a password; null when there is a place.</param>
    /// <returns>The place, or null.</returns>
    public static PostgresPlace? Read(string text, out string? problem)
    {
        if (!text.StartsWith(Prefix, StringComparison.OrdinalIgnoreCase))
        {
            problem = "found something else than postgres:...; allowed: postgres:Host=SERVER;Database=NAME;Username=USER, or postgres://USER@SERVER:PORT/NAME";
            return null;
        }

        var rest = text[Prefix.Length..];
        NpgsqlConnectionStringBuilder settings;
        try
        {
            settings = rest.StartsWith("//", StringComparison.Ordinal) ? OfUri(rest) : new NpgsqlConnectionStringBuilder(rest);
        }
        catch (Exception exception) when (exception is ArgumentException or FormatException or KeyNotFoundException or InvalidCastException or OverflowException)
        {
            // What the reader says may repeat the text, and the text may hold a password.
            problem = "found settings of a connection that cannot be read; allowed: Host=SERVER;Database=NAME;Username=USER, each KEY=VALUE, separated by semicolons";
            return null;
        }

        if (string.IsNullOrWhiteSpace(settings.Host) || string.IsNullOrWhiteSpace(settings.Database))
        {
            problem = "found no server or no database; both must be named: postgres:Host=SERVER;Database=NAME";
            return null;
        }

        problem = null;
        return new PostgresPlace(settings);
    }

    /// <inheritdoc/>
    public override string ToString() => Name;

    /// <summary>The settings of a connection that writes: its commits are flushed whatever the server's usual is, and a dead one is noticed soon.</summary>
    internal string ForWriting(string schema) => Build(schema, settings =>
    {
        settings.Pooling = false;
        settings.MaxAutoPrepare = 64;
        settings.AutoPrepareMinUsages = 2;
        settings.Options = "-c synchronous_commit=on -c tcp_keepalives_idle=10 -c tcp_keepalives_interval=5 -c tcp_keepalives_count=3";
    });

    /// <summary>The settings of connections that take what centers send; many are held ready.</summary>
    internal string ForChain() => Build(ChainContext.Schema, settings =>
    {
        settings.MaxAutoPrepare = 64;
        settings.AutoPrepareMinUsages = 2;
        settings.Options = "-c synchronous_commit=on";
    });

    /// <summary>The settings of connections that only read; a few are held ready.</summary>
    internal string ForReading(string schema) => Build(schema, settings => settings.Options = "-c default_transaction_read_only=on");

    /// <summary>The settings of a connection that looks whether all is well: a new one each time, so that it tells how it is now.</summary>
    internal string ForLooking(string schema) => Build(schema, settings =>
    {
        settings.Pooling = false;
        settings.CommandTimeout = ConnectSeconds;
    });

    private string Build(string schema, Action<NpgsqlConnectionStringBuilder> more)
    {
        var settings = new NpgsqlConnectionStringBuilder(_settings.ConnectionString)
        {
            SearchPath = schema,
            ApplicationName = "aimtrainer",
            Timeout = ConnectSeconds,
            CommandTimeout = AnswerSeconds,
            KeepAlive = 10,
            PersistSecurityInfo = false,
            IncludeErrorDetail = false,
        };
        more(settings);
        return settings.ConnectionString;
    }

    private static NpgsqlConnectionStringBuilder OfUri(string rest)
    {
        var uri = new Uri("postgres:" + rest);
        var settings = new NpgsqlConnectionStringBuilder { Host = uri.Host, Database = Uri.UnescapeDataString(uri.AbsolutePath.TrimStart('/')) };
        if (uri.Port > 0)
        {
            settings.Port = uri.Port;
        }

        if (uri.UserInfo.Length > 0)
        {
            var parts = uri.UserInfo.Split(':', 2);
            settings.Username = Uri.UnescapeDataString(parts[0]);
            settings.Password = parts.Length > 1 ? Uri.UnescapeDataString(parts[1]) : null;
        }

        foreach (var pair in uri.Query.TrimStart('?').Split('&', StringSplitOptions.RemoveEmptyEntries))
        {
            var parts = pair.Split('=', 2);
            settings[Uri.UnescapeDataString(parts[0])] = parts.Length > 1 ? Uri.UnescapeDataString(parts[1]) : "";
        }

        return settings;
    }
}
