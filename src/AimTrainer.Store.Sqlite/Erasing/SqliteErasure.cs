using System.Security.Cryptography;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace AimTrainer.Store.Sqlite;

/// <summary>
/// Takes people out of a record in SQLite: the rows, then the bytes. Rows that are deleted leave their bytes in free pages and in the
/// write-ahead log; so the file is written anew and the log cut to nothing before it is called done. A connection of its own, beside the
/// writer's: shots that come meanwhile wait, and are told so when it takes long.
/// </summary>
/// <param name="folder">The folder; this process must hold it.</param>
/// <param name="clock">The time.</param>
public sealed class SqliteErasure(DataFolder folder, TimeProvider clock) : IRecordErasure
{
    /// <summary>Readers let go of the log sooner or later; a page's question takes less than a second.</summary>
    private const int TriesToCutTheLog = 10;

    private readonly Lock _one = new();

    /// <inheritdoc/>
    public Task<Erased?> EraseBowlerAsync(string bowler, CancellationToken cancellationToken) => Task.Run(() => EraseBowler(bowler), cancellationToken);

    /// <inheritdoc/>
    public Task<Erased> EraseBeforeAsync(DateTimeOffset before, CancellationToken cancellationToken) => Task.Run(() => EraseBefore(before), cancellationToken);

    /// <summary>Takes out of the record what was erased before: for a copy that was put in its place.</summary>
    /// <returns>How many sessions were found again and erased.</returns>
    /// <exception cref="StoreUnavailableException">It could not be done.</exception>
    public int EraseAgain()
    {
        var gone = new Erasures(folder.FolderPath).All().SelectMany(erased => erased.Sessions).ToHashSet(StringComparer.Ordinal);
        return gone.Count == 0 ? 0 : Within(connection =>
        {
            var found = Ids(connection, "1 = 1").Where(gone.Contains).ToList();
            if (found.Count > 0)
            {
                InOne(connection, () =>
                {
                    foreach (var id in found)
                    {
                        Erase(connection, typeof(SessionRow), "\"id\" = $what", id);
                    }

                    EraseEmptyBowlers(connection);
                });
                WriteAnew(connection);
            }

            return found.Count;
        });
    }

    private Erased? EraseBowler(string bowler) => Within(connection =>
    {
        var key = NameKey.Of(bowler);
        if (Number(connection, "SELECT count(*) FROM bowlers WHERE \"key\" = $what", key) == 0)
        {
            return null;
        }

        return (Erased?)Done(connection, "bowler_id IN (SELECT id FROM bowlers WHERE \"key\" = $what)", key, () => Erase(connection, typeof(BowlerRow), "\"key\" = $what", key));
    });

    private Erased EraseBefore(DateTimeOffset before) => Within(connection => Done(connection, "started_at < $what", before.UtcDateTime, () =>
    {
        Erase(connection, typeof(SessionRow), "\"started_at\" < $what", before.UtcDateTime);
        EraseEmptyBowlers(connection);
    }));

    private Erased Done(SqliteConnection connection, string sessions, object what, Action erase)
    {
        Erased? erased = null;
        InOne(connection, () =>
        {
            erased = new Erased(RandomNumberGenerator.GetHexString(12, lowercase: true), clock.GetUtcNow(), Ids(connection, sessions, what).ToValueList(), Copies());
            erase();

            // Before the commit: were it after, a kill between the two would leave nobody to tell the other copies. Ids that are still there after
            // all are only erased a second time.
            if (erased.Sessions.Count > 0)
            {
                new Erasures(folder.FolderPath).Add(erased);

                // The chain, where the center has one, is told at the next sending.
                var files = new CenterFiles(folder.FolderPath);
                files.Write(files.ReadErasures().AsEnumerable().Append(new Erasure(erased.Id, erased.At, erased.Sessions, null)).ToValueList());
            }
        });
        if (erased!.Sessions.Count > 0 || Number(connection, "PRAGMA freelist_count") > 0)
        {
            WriteAnew(connection);
        }

        return erased;
    }

    private T Within<T>(Func<SqliteConnection, T> work)
    {
        if (!folder.IsHeld)
        {
            throw new InvalidOperationException("an erasure needs a folder that is held");
        }

        lock (_one)
        {
            try
            {
                using var connection = SqliteDatabase.OpenForWriting(folder.DatabaseFile);
                SqliteDatabase.Execute(connection, "PRAGMA secure_delete = ON");
                return work(connection);
            }
            catch (Exception exception) when (StoreFault.IsWorlds(exception))
            {
                throw StoreFault.For(folder.DatabaseFile, exception);
            }
        }
    }

    private static void InOne(SqliteConnection connection, Action work)
    {
        SqliteDatabase.Execute(connection, "BEGIN IMMEDIATE");
        try
        {
            work();
            SqliteDatabase.Execute(connection, "COMMIT");
        }
        catch
        {
            if (raw.sqlite3_get_autocommit(connection.Handle) == 0)
            {
                SqliteDatabase.Execute(connection, "ROLLBACK");
            }

            throw;
        }
    }

    private static void Erase(SqliteConnection connection, Type root, string which, object what)
    {
        using var record = SqliteDatabase.ContextOver(connection);
        foreach (var statement in ErasureStatements.For(record, root, which))
        {
            using var command = connection.CreateCommand();
            command.CommandText = statement;
            command.Parameters.AddWithValue("$what", what);
            command.ExecuteNonQuery();
        }
    }

    private static void EraseEmptyBowlers(SqliteConnection connection) => Erase(connection, typeof(BowlerRow), "$what = 1 AND \"id\" NOT IN (SELECT bowler_id FROM sessions)", 1);

    private static void WriteAnew(SqliteConnection connection)
    {
        SqliteDatabase.Execute(connection, "VACUUM");
        for (var i = 0; ; i++)
        {
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA wal_checkpoint(TRUNCATE)";
            using var reader = command.ExecuteReader();
            if (reader.Read() && reader.GetInt64(0) == 0)
            {
                return;
            }

            if (i == TriesToCutTheLog)
            {
                throw new StoreUnavailableException(
                    "the rows are erased, but somebody reads the record all the time, so that their bytes still lie in its log. Close displays and reports that follow the record, and erase once more");
            }
        }
    }

    private static IEnumerable<string> Ids(SqliteConnection connection, string which, object? what = null)
    {
        using var command = connection.CreateCommand();
        command.CommandText = $"SELECT id FROM sessions WHERE {which} ORDER BY started_at";
        if (what is not null)
        {
            command.Parameters.AddWithValue("$what", what);
        }

        var ids = new List<string>();
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            ids.Add(reader.GetString(0));
        }

        return ids;
    }

    private static long Number(SqliteConnection connection, string sql, object? what = null)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        if (what is not null)
        {
            command.Parameters.AddWithValue("$what", what);
        }

        return (long)command.ExecuteScalar()!;
    }

    private ValueList<string> Copies() =>
        Directory.EnumerateFiles(folder.FolderPath, "*.db*").Where(file => !Path.GetFileName(file).StartsWith("aimtrainer.db-", StringComparison.Ordinal) && file != folder.DatabaseFile)
            .Order(StringComparer.Ordinal).ToValueList();
}
