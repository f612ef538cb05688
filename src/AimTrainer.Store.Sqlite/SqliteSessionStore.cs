using System.Runtime.CompilerServices;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace AimTrainer.Store.Sqlite;

/// <summary>Sessions in one SQLite file in a data folder. Safe to use from many threads.</summary>
public sealed class SqliteSessionStore : IRecordStore
{
    private readonly string _file;
    private readonly StoreWriter? _writer;

    private SqliteSessionStore(string file, StoreWriter? writer)
    {
        _file = file;
        _writer = writer;
    }

    /// <inheritdoc/>
    public string Place => _file;

    /// <summary>
    /// Opens the record of a folder: for writing when the folder is held (a missing record is made, an older one brought up to
    /// date), else for reading only.
    /// </summary>
    /// <param name="folder">The folder; it stays open as long as the store.</param>
    /// <exception cref="StoreUnavailableException">
    /// The file is not a record, newer than this program, damaged, or out of reach; for reading also: missing, or older.
    /// Nothing was changed.
    /// </exception>
    public static SqliteSessionStore Open(DataFolder folder) => Open(folder, null);

    /// <summary>Opens a record that lies anywhere, such as a backup, for reading only.</summary>
    /// <param name="file">The file.</param>
    /// <exception cref="StoreUnavailableException">It is missing, no record, older or newer than this program, damaged, or out of reach.</exception>
    public static SqliteSessionStore OpenFile(string file)
    {
        try
        {
            CheckSchema(file, mayMigrate: false);
        }
        catch (Exception exception) when (StoreFault.IsWorlds(exception))
        {
            throw StoreFault.For(file, exception);
        }

        return new SqliteSessionStore(file, null);
    }

    /// <summary>For tests: also does something with each connection that writes.</summary>
    internal static SqliteSessionStore Open(DataFolder folder, Action<SqliteConnection>? onOpened)
    {
        var file = folder.DatabaseFile;
        string? copy = null;
        try
        {
            // Looked at through a connection that cannot write: a file that is refused stays as it is to the last byte.
            if (!CheckSchema(file, folder.IsHeld))
            {
                copy = UpdateBackup.Make(folder);
                using var connection = SqliteDatabase.OpenForWriting(file);
                RecordSchema.Migrate(connection);
            }
        }
        catch (Exception exception) when (StoreFault.IsWorlds(exception))
        {
            throw StoreFault.For(file, exception);
        }
        catch (SqliteException exception) when (copy is not null)
        {
            throw new StoreUnavailableException(
                $"{file} could not be brought up to date ({exception.Message.TrimEnd('.')}). Nothing is lost: it was copied to {copy} first. Keep both, and use the older program until this is sorted out", exception);
        }

        return new SqliteSessionStore(file, folder.IsHeld ? new StoreWriter(new SqliteRecordDatabase(file, onOpened)) : null);
    }

    /// <inheritdoc/>
    /// <exception cref="ArgumentException">The setup names another drill than the one given, or no bowler.</exception>
    public Task CreateAsync(SessionSetup setup, DrillSource drill, CancellationToken cancellationToken) =>
        Writer.KeepAsync(Work.NewSession.Of(setup, drill), cancellationToken);

    /// <inheritdoc/>
    public Task AppendAsync(string sessionId, LogEntry entry, CancellationToken cancellationToken) =>
        Writer.KeepAsync(Work.Step.Of(sessionId, entry), cancellationToken);

    /// <inheritdoc/>
    public Task<StoredSession?> FindAsync(string sessionId, CancellationToken cancellationToken) =>
        ReadAsync(record => record.FindSessionAsync(sessionId, cancellationToken));

    /// <inheritdoc/>
    public async IAsyncEnumerable<LogEntry> ReadLogAsync(string sessionId, long after, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        // In pieces, so that a slow caller does not hold a read open: that would keep the writer from shortening its log.
        const int StepsAtOnce = 500;
        while (true)
        {
            var from = after;
            var steps = await ReadAsync(async record =>
                (await record.Steps(sessionId).Where(step => step.Sequence > from).Take(StepsAtOnce).ToListAsync(cancellationToken)
                    .ConfigureAwait(false)).ConvertAll(step => step.ToEntry())).ConfigureAwait(false);
            foreach (var step in steps)
            {
                yield return step;
            }

            if (steps.Count < StepsAtOnce)
            {
                yield break;
            }

            after = steps[^1].Sequence;
        }
    }

    /// <inheritdoc/>
    public Task<SessionProgress?> NewestOfStationAsync(int station, CancellationToken cancellationToken) =>
        ReadAsync(record => record.NewestOfStationAsync(station, cancellationToken));

    /// <inheritdoc/>
    public Task<ValueList<SessionListing>> ListAsync(SessionFilter filter, CancellationToken cancellationToken) =>
        ReadAsync(async record => (await record.Listing(filter).ToListAsync(cancellationToken).ConfigureAwait(false)).ToValueList());

    /// <inheritdoc/>
    public Task<BowlerRecord?> FindBowlerAsync(string name, CancellationToken cancellationToken) =>
        ReadAsync(record => record.FindBowlerAsync(name, cancellationToken));

    /// <inheritdoc/>
    public Task<ValueList<BowlerListing>> ListBowlersAsync(int most, CancellationToken cancellationToken) =>
        ReadAsync(record => record.ListBowlersAsync(most, cancellationToken));

    /// <inheritdoc/>
    public Task<BowlerPractice?> FindPracticeAsync(PracticeFilter filter, CancellationToken cancellationToken) =>
        ReadAsync(record => record.FindPracticeAsync(filter, cancellationToken));

    /// <inheritdoc/>
    public Task<ValueList<PracticeCrossing>> LastCrossingsAsync(PracticeFilter filter, int shots, CancellationToken cancellationToken) =>
        ReadAsync(record => record.LastCrossingsAsync(filter, shots, cancellationToken));

    /// <inheritdoc/>
    public Task<IReadOnlyDictionary<string, LaneProfile>> FindLanesAsync(IReadOnlyCollection<string> sessionIds, CancellationToken cancellationToken) =>
        ReadAsync(record => record.FindLanesAsync(sessionIds, cancellationToken));

    /// <inheritdoc/>
    public Task<ValueList<BallRecord>> ListBallsAsync(string? bowler, CancellationToken cancellationToken) =>
        ReadAsync(record => record.ListBallsAsync(bowler, null, cancellationToken));

    /// <inheritdoc/>
    public Task<BallRecord?> FindBallAsync(string bowler, string name, CancellationToken cancellationToken) =>
        ReadAsync(async record => await record.ListBallsAsync(bowler, name, cancellationToken).ConfigureAwait(false) is { Count: > 0 } found ? found[0] : null);

    /// <inheritdoc/>
    public Task KeepBallAsync(BallDetails ball, CancellationToken cancellationToken) => Writer.KeepAsync(Work.Ball.Of(ball), cancellationToken);

    /// <inheritdoc/>
    public async Task<bool> AddSurfaceAsync(string bowler, string ball, BallSurface surface, CancellationToken cancellationToken)
    {
        var work = Work.Surface.Of(bowler, ball, surface);
        await Writer.KeepAsync(work, cancellationToken).ConfigureAwait(false);
        return work.IsKnown;
    }

    /// <inheritdoc/>
    public Task<T> AskAsync<T>(Func<RecordContext, Task<T>> question, CancellationToken cancellationToken) => ReadAsync(question);

    /// <inheritdoc/>
    public async Task<ErasedRows> EraseAsync(ErasureScope scope, Action<ValueList<string>> beforeCommit, CancellationToken cancellationToken)
    {
        var work = new Work.Erasure(scope, beforeCommit);
        await Writer.KeepAsync(work, cancellationToken).ConfigureAwait(false);
        return work.Rows;
    }

    /// <summary>Keeps what is waiting, and closes the file.</summary>
    public void Dispose() => _writer?.Dispose();

    private StoreWriter Writer => _writer ?? throw new InvalidOperationException("this record was opened for reading only");

    private static bool CheckSchema(string file, bool mayMigrate)
    {
        if (!File.Exists(file))
        {
            return mayMigrate ? false : throw new StoreUnavailableException(
                $"{file}: there is no record here yet. Run a session first (aimtrainer demo)");
        }

        using var connection = SqliteDatabase.OpenForReading(file);
        return RecordSchema.IsCurrent(connection, file)
            || (mayMigrate ? false : throw new StoreUnavailableException(
                $"{file} was made by an older AimTrainer. Bring it up to date by running a session (aimtrainer demo), then try again"));
    }

    private async Task<T> ReadAsync<T>(Func<RecordContext, Task<T>> question)
    {
        try
        {
            using var record = SqliteDatabase.ContextOver(SqliteDatabase.OpenForReading(_file), owns: true);
            return await question(record).ConfigureAwait(false);
        }
        catch (Exception exception) when (StoreFault.IsWorlds(exception))
        {
            throw StoreFault.For(_file, exception);
        }
    }
}
