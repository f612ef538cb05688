using System.Globalization;
using AimTrainer.Sessions;
using Microsoft.Data.Sqlite;

namespace AimTrainer.Store.Sqlite;

/// <summary>Copies the record away, and back.</summary>
public static class RecordBackup
{
    /// <summary>What SQLite keeps beside a database: its log with an index, or what takes back a change that was not finished.</summary>
    private static readonly string[] LogEndings = ["-wal", "-shm", "-journal"];

    /// <summary>
    /// Copies the record of a folder to one file, also while a session runs: the copy holds everything acknowledged before it
    /// began. It is written beside its place, checked through, and only then put there.
    /// </summary>
    /// <param name="folder">The folder, held or not.</param>
    /// <param name="path">Where to.</param>
    /// <param name="overwrite">Whether a file that is there may be replaced.</param>
    /// <param name="cancellationToken">Asked between the steps.</param>
    /// <exception cref="StoreUnavailableException">There is a file already, no record, or it cannot be read or written.</exception>
    public static Task<BackupReport> BackupAsync(DataFolder folder, string path, bool overwrite, CancellationToken cancellationToken) =>
        Task.Run(() => Backup(folder, Path.GetFullPath(path), overwrite, cancellationToken), cancellationToken);

    /// <summary>
    /// Puts a backup in the place of the folder's record, after checking it through. The record that was there is kept beside
    /// it as <c>aimtrainer.db.before-restore-...</c>. At no moment is there no record: a kill leaves the old or the new one.
    /// </summary>
    /// <param name="folder">The folder; held, and no store open on it.</param>
    /// <param name="path">The backup.</param>
    /// <param name="timeProvider">For the name of the record that was there.</param>
    /// <param name="cancellationToken">Asked between the steps, until the old record is touched.</param>
    /// <exception cref="InvalidOperationException">The folder is not held.</exception>
    /// <exception cref="StoreUnavailableException">
    /// The file is not a healthy record of this program, or there is no room. Nothing was changed.
    /// </exception>
    public static Task<BackupReport> RestoreAsync(
        DataFolder folder, string path, TimeProvider timeProvider, CancellationToken cancellationToken) =>
        folder.IsHeld
            ? Task.Run(() => Restore(folder, Path.GetFullPath(path), timeProvider, cancellationToken), cancellationToken)
            : throw new InvalidOperationException("a restore needs a folder that is held");

    private static BackupReport Backup(DataFolder folder, string path, bool overwrite, CancellationToken cancellationToken)
    {
        if (!folder.HasRecord)
        {
            throw new StoreUnavailableException($"{folder.DatabaseFile}: there is no record here yet, so there is nothing to back up");
        }

        if (SameFile(path, folder.DatabaseFile))
        {
            throw new StoreUnavailableException($"{path} is the record itself. Name another file for the backup");
        }

        if (Directory.Exists(path))
        {
            throw new StoreUnavailableException($"{path} is a folder. Name a file in it");
        }

        if (File.Exists(path) && !overwrite)
        {
            throw new StoreUnavailableException(
                $"{path} exists already and was left as it is. Name another file, or say that it may be overwritten");
        }

        var about = folder.DatabaseFile;
        var copy = Beside(path);
        try
        {
            using (var source = SqliteDatabase.OpenForReading(folder.DatabaseFile))
            {
                RecordSchema.IsCurrent(source, folder.DatabaseFile);
                about = path;
                using var target = OpenCopy(copy);
                source.BackupDatabase(target);
            }

            cancellationToken.ThrowIfCancellationRequested();
            var sessions = Settle(copy, path);
            cancellationToken.ThrowIfCancellationRequested();
            File.Move(copy, path, overwrite);
            return new BackupReport(path, new FileInfo(path).Length, sessions);
        }
        catch (Exception exception) when (StoreFault.IsWorlds(exception))
        {
            throw StoreFault.For(about, exception);
        }
        finally
        {
            Remove(copy);
        }
    }

    private static BackupReport Restore(DataFolder folder, string path, TimeProvider timeProvider, CancellationToken cancellationToken)
    {
        if (!File.Exists(path))
        {
            throw new StoreUnavailableException($"{path}: there is no such file. Name a backup that was made with aimtrainer backup");
        }

        var database = folder.DatabaseFile;
        if (SameFile(path, database))
        {
            throw new StoreUnavailableException($"{path} is the record itself. Name a backup");
        }

        var copy = Beside(database);
        var about = path;
        try
        {
            // A copy is checked, so that the backup stays as it is. Somebody may have copied a record that was in use: what is
            // in the log beside it belongs to it.
            CopyWithLog(path, copy);
            var sessions = Settle(copy, path);
            var bytes = new FileInfo(copy).Length;
            cancellationToken.ThrowIfCancellationRequested();
            about = database;
            var replaced = folder.HasRecord ? SetAside(database, timeProvider) : null;
            File.Move(copy, database, overwrite: true);
            return new BackupReport(path, bytes, sessions, replaced);
        }
        catch (Exception exception) when (StoreFault.IsWorlds(exception))
        {
            throw StoreFault.For(about, exception);
        }
        finally
        {
            Remove(copy);
        }
    }

    /// <summary>Copies the record aside and takes its log away: a log must never meet a database that it does not belong to.</summary>
    private static string SetAside(string database, TimeProvider timeProvider)
    {
        var stamp = timeProvider.GetUtcNow().ToString("yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture);
        var aside = $"{database}.before-restore-{stamp}";
        for (var again = 2; File.Exists(aside); again++)
        {
            aside = string.Create(CultureInfo.InvariantCulture, $"{database}.before-restore-{stamp}-{again}");
        }

        try
        {
            CopyWithLog(database, aside);
            Flush(aside);
        }
        catch
        {
            Remove(aside);
            throw;
        }

        try
        {
            // Not by another journal mode, whose change is one more that a kill can leave half done.
            using var connection = SqliteDatabase.OpenForWriting(database);
            SqliteDatabase.Scalar(connection, "PRAGMA wal_checkpoint(TRUNCATE)");
        }
        catch (SqliteException)
        {
            // A damaged record is what a restore is for: its copy is kept as it is, log and all.
        }

        foreach (var ending in LogEndings)
        {
            File.Delete(database + ending);
        }

        return aside;
    }

    /// <summary>Makes a copy one plain file without a log beside it, checks it through, and puts it on the disk.</summary>
    /// <param name="copy">The copy.</param>
    /// <param name="path">What it is a copy of, for messages.</param>
    /// <returns>How many sessions are in it.</returns>
    private static long Settle(string copy, string path)
    {
        long sessions;
        using (var connection = OpenCopy(copy))
        {
            if (!RecordSchema.IsCurrent(connection, path)
                && SqliteDatabase.Number(connection, "SELECT count(*) FROM sqlite_master WHERE name = 'sessions'") == 0)
            {
                throw new StoreUnavailableException(
                    $"{path} is empty: there is no record in it. Name a backup that was made with aimtrainer backup");
            }

            SqliteDatabase.Scalar(connection, "PRAGMA journal_mode = DELETE");
            if (SqliteDatabase.Scalar(connection, "PRAGMA integrity_check(1)") is not "ok" and var found)
            {
                throw new StoreUnavailableException($"{path} is damaged ({found}); nothing was changed. Use another backup");
            }

            sessions = SqliteDatabase.Number(connection, "SELECT count(*) FROM sessions");
        }

        Flush(copy);
        return sessions;
    }

    private static SqliteConnection OpenCopy(string copy)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = copy, Pooling = false }.ToString());
        connection.Open();
        return connection;
    }

    private static void CopyWithLog(string from, string to)
    {
        File.Copy(from, to);
        foreach (var ending in (ReadOnlySpan<string>)["-wal", "-journal"])
        {
            if (new FileInfo(from + ending) is { Exists: true, Length: > 0 })
            {
                File.Copy(from + ending, to + ending);
            }
        }
    }

    private static void Flush(string file)
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.ReadWrite);
        stream.Flush(flushToDisk: true);
    }

    private static void Remove(string copy)
    {
        foreach (var ending in (ReadOnlySpan<string>)["", .. LogEndings])
        {
            try
            {
                File.Delete(copy + ending);
            }
            catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
            {
                // What is left over harms nobody, and says by its name what it is.
            }
        }
    }

    /// <summary>A name in the same folder, so that the copy can be put in place in one step.</summary>
    private static string Beside(string path) => $"{path}.{Guid.NewGuid():N}.part";

    private static bool SameFile(string one, string other) =>
        string.Equals(one, other, OperatingSystem.IsWindows() ? StringComparison.OrdinalIgnoreCase : StringComparison.Ordinal);
}
