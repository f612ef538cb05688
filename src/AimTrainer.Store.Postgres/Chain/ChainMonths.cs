using System.Collections.Concurrent;
using System.Globalization;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>Makes the parts of the tables that hold a month, when the first session of the month comes.</summary>
internal sealed class ChainMonths
{
    /// <summary>The tables that are in parts.</summary>
    public static readonly string[] Tables = ["log_steps", "crossings"];

    /// <summary>Sessions of other years go into one part for all: a clock that is wrong by decades is not to make tables.</summary>
    private const int FirstYear = 2015, LastYear = 2064;

    private readonly ConcurrentDictionary<(int Year, int Month), bool> _made = [];

    /// <summary>Sees to it that a month has its parts.</summary>
    public void Make(NpgsqlConnection connection, DateTimeOffset moment)
    {
        var utc = moment.UtcDateTime;
        if (utc.Year is < FirstYear or > LastYear || !_made.TryAdd((utc.Year, utc.Month), true))
        {
            return;
        }

        try
        {
            var from = new DateTime(utc.Year, utc.Month, 1);
            using var transaction = connection.BeginTransaction();
            foreach (var table in Tables)
            {
                // One at a time: two that make the same part at once would both find it missing.
                using var make = new NpgsqlCommand(string.Create(
                    CultureInfo.InvariantCulture,
                    $"""
                    SELECT pg_advisory_xact_lock(hashtext('chain months'));
                    CREATE TABLE IF NOT EXISTS chain.{table}_{from:yyyy_MM} PARTITION OF chain.{table}
                        FOR VALUES FROM ('{from:yyyy-MM-dd} 00:00:00+00') TO ('{from.AddMonths(1):yyyy-MM-dd} 00:00:00+00')
                    """), connection);
                make.ExecuteNonQuery();
            }

            transaction.Commit();
        }
        catch
        {
            _made.TryRemove((utc.Year, utc.Month), out _);
            throw;
        }
    }
}
