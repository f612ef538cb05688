using System.Runtime.CompilerServices;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>Sessions in a PostgreSQL database. Safe to use from many threads.</summary>
public sealed class PostgresSessionStore : IRecordStore
{
    private readonly PostgresPlace _place;
    private readonly NpgsqlDataSource _readers;
    private readonly PostgresRecordDatabase? _database;
    private readonly StoreWriter? _writer;

    private PostgresSessionStore(PostgresPlace place, PostgresRecordDatabase? database)
    {
        _place = place;
        _readers = NpgsqlDataSource.Create(place.ForReading(PostgresModel.Schema));
        _database = database;
        _writer = database is null ? null : new StoreWriter(database);
    }

    /// <inheritdoc/>
    public string Place => _place.Name;

    /// <summary>
    /// Opens the record for writing: missing tables are made, older ones brought up to date. One process at a time may hold it so.
    /// </summary>
    /// <param name="place">Which database; it must exist, its tables need not.</param>
    /// <param name="clock">The time.</param>
    /// <exception cref="StoreUnavailableException">It cannot be reached, is in use by another process, is no record, or newer than this program.</exception>
    public static PostgresSessionStore Open(PostgresPlace place, TimeProvider clock) => OpenOver(new PostgresRecordDatabase(place, clock), place);

    /// <summary>For tests: with other limits.</summary>
    internal static PostgresSessionStore OpenOver(PostgresRecordDatabase database, PostgresPlace place)
    {
        NpgsqlConnection? connection = null;
        try
        {
            connection = database.Connect();
            CheckFlushes(connection, place);
            if (!PostgresSchema.IsCurrent(connection, PostgresModel.Schema, place.Name, PostgresSchema.Known<RecordContext>()))
            {
                using var record = PostgresDatabase.ContextOver(connection);
                record.Database.Migrate();
            }

            database.HoldReady(connection);
            return new PostgresSessionStore(place, database);
        }
        catch (Exception exception)
        {
            connection?.Dispose();
            throw PostgresFault.IsWorlds(exception) ? PostgresFault.For(place.Name, exception) : exception;
        }
    }

    /// <summary>Opens the record for reading only, beside whoever writes.</summary>
    /// <param name="place">Which database.</param>
    /// <exception cref="StoreUnavailableException">It cannot be reached, is no record, or older or newer than this program.</exception>
    public static PostgresSessionStore OpenForReading(PostgresPlace place)
    {
        try
        {
            using var connection = new NpgsqlConnection(place.ForReading(PostgresModel.Schema));
            connection.Open();
            if (!PostgresSchema.IsCurrent(connection, PostgresModel.Schema, place.Name, PostgresSchema.Known<RecordContext>()))
            {
                throw new StoreUnavailableException(
                    $"{place.Name}: there is no record here yet, or an older AimTrainer made it. Run a session on it first (aimtrainer demo --record ...), then try again");
            }
        }
        catch (Exception exception) when (PostgresFault.IsWorlds(exception))
        {
            throw PostgresFault.For(place.Name, exception);
        }

        return new PostgresSessionStore(place, null);
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
        ReadAsync(record => record.FindSessionAsync(sessionId, cancellationToken), cancellationToken);

    /// <inheritdoc/>
    public async IAsyncEnumerable<LogEntry> ReadLogAsync(string sessionId, long after, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        // In pieces, so that a slow caller does not hold a connection.
        const int StepsAtOnce = 500;
        while (true)
        {
            var from = after;
            var steps = await ReadAsync(
                async record => (await record.Steps(sessionId).Where(step => step.Sequence > from).Take(StepsAtOnce).ToListAsync(cancellationToken)
                    .ConfigureAwait(false)).ConvertAll(step => step.ToEntry()),
                cancellationToken).ConfigureAwait(false);
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
        ReadAsync(record => record.NewestOfStationAsync(station, cancellationToken), cancellationToken);

    /// <inheritdoc/>
    public Task<ValueList<SessionListing>> ListAsync(SessionFilter filter, CancellationToken cancellationToken) =>
        ReadAsync(async record => (await record.Listing(filter).ToListAsync(cancellationToken).ConfigureAwait(false)).ToValueList(), cancellationToken);

    /// <inheritdoc/>
    public Task<BowlerRecord?> FindBowlerAsync(string name, CancellationToken cancellationToken) =>
        ReadAsync(record => record.FindBowlerAsync(name, cancellationToken), cancellationToken);

    /// <inheritdoc/>
    public Task<ValueList<BowlerListing>> ListBowlersAsync(int most, CancellationToken cancellationToken) =>
        ReadAsync(record => record.ListBowlersAsync(most, cancellationToken), cancellationToken);

    /// <inheritdoc/>
    public Task<BowlerPractice?> FindPracticeAsync(PracticeFilter filter, CancellationToken cancellationToken) =>
        ReadAsync(record => record.FindPracticeAsync(filter, cancellationToken), cancellationToken);

    /// <inheritdoc/>
    public Task<ValueList<PracticeCrossing>> LastCrossingsAsync(PracticeFilter filter, int shots, CancellationToken cancellationToken) =>
        ReadAsync(record => record.LastCrossingsAsync(filter, shots, cancellationToken), cancellationToken);

    /// <inheritdoc/>
    public Task<IReadOnlyDictionary<string, LaneProfile>> FindLanesAsync(IReadOnlyCollection<string> sessionIds, CancellationToken cancellationToken) =>
        ReadAsync(record => record.FindLanesAsync(sessionIds, cancellationToken), cancellationToken);

    /// <inheritdoc/>
    public Task<ValueList<BallRecord>> ListBallsAsync(string? bowler, CancellationToken cancellationToken) =>
        ReadAsync(record => record.ListBallsAsync(bowler, null, cancellationToken), cancellationToken);

    /// <inheritdoc/>
    public Task<BallRecord?> FindBallAsync(string bowler, string name, CancellationToken cancellationToken) => ReadAsync(
        async record => await record.ListBallsAsync(bowler, name, cancellationToken).ConfigureAwait(false) is { Count: > 0 } found ? found[0] : null, cancellationToken);

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
    public Task<T> AskAsync<T>(Func<RecordContext, Task<T>> question, CancellationToken cancellationToken) => ReadAsync(question, cancellationToken);

    /// <inheritdoc/>
    public async Task<ErasedRows> EraseAsync(ErasureScope scope, Action<ValueList<string>> beforeCommit, CancellationToken cancellationToken)
    {
        var work = new Work.Erasure(scope, beforeCommit);
        await Writer.KeepAsync(work, cancellationToken).ConfigureAwait(false);
        if (work.LeavesTraces)
        {
            await DeadRows.FreeAsync(_readers, _place.Name).ConfigureAwait(false);
        }

        return work.Rows;
    }

    /// <summary>Keeps what is waiting, and closes the connections.</summary>
    public void Dispose()
    {
        _writer?.Dispose();
        _database?.Dispose();
        _readers.Dispose();
    }

    private StoreWriter Writer => _writer ?? throw new InvalidOperationException("this record was opened for reading only");

    /// <summary>Refuses a server that does not flush its disk.</summary>
    internal static void CheckFlushes(NpgsqlConnection connection, PostgresPlace place)
    {
        using var command = new NpgsqlCommand("SHOW fsync", connection);
        if (command.ExecuteScalar() is not "on")
        {
            throw new StoreUnavailableException(
                $"{place.Name}: this server is set not to flush its disk (fsync = off), so a power cut could take what was acknowledged. Set fsync = on there, then try again");
        }
    }

    private async Task<T> ReadAsync<T>(Func<RecordContext, Task<T>> question, CancellationToken cancellationToken)
    {
        try
        {
            using var record = PostgresDatabase.ContextOver(await _readers.OpenConnectionAsync(cancellationToken).ConfigureAwait(false), owns: true);
            return await question(record).ConfigureAwait(false);
        }
        catch (Exception exception) when (PostgresFault.IsWorlds(exception))
        {
            throw PostgresFault.For(_place.Name, exception);
        }
    }
}
