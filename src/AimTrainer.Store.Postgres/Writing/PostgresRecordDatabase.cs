using AimTrainer.Sessions;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>A record in a PostgreSQL database, for the writer.</summary>
/// <param name="place">Which.</param>
/// <param name="clock">For how long an outcome is asked after.</param>
internal sealed class PostgresRecordDatabase(PostgresPlace place, TimeProvider clock) : RecordDatabase, IDisposable
{
    private readonly string _settings = place.ForWriting(PostgresModel.Schema);
    private NpgsqlConnection? _ready;
    private Doubt? _doubt;

    /// <summary>For how long the server is asked what became of a commit, before its sender is told that nothing was kept.</summary>
    internal TimeSpan AsksFor { get; init; } = TimeSpan.FromSeconds(10);

    /// <inheritdoc/>
    public override string Name => place.Name;

    /// <inheritdoc/>
    public override StepStatements Open()
    {
        var connection = Interlocked.Exchange(ref _ready, null) ?? Connect();
        try
        {
            if (_doubt is { } doubt)
            {
                doubt.TakeBack(connection);
                _doubt = null;
            }

            return new PostgresStatements(connection, this);
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public override bool IsWorlds(Exception exception) => PostgresFault.IsWorlds(exception);

    /// <inheritdoc/>
    public override bool IsRefusedRow(Exception exception) => PostgresFault.IsRefusedRow(exception);

    /// <inheritdoc/>
    public override StoreUnavailableException Unavailable(Exception exception) => PostgresFault.For(place.Name, exception);

    /// <inheritdoc/>
    public override bool KeepsConnectionAfter(Exception exception) => !PostgresFault.IsConnection(exception);

    /// <summary>Closes what was held ready and never used.</summary>
    public void Dispose() => Interlocked.Exchange(ref _ready, null)?.Dispose();

    /// <summary>Holds a connection ready for the first step, and the lock with it from now on.</summary>
    internal void HoldReady(NpgsqlConnection connection) => _ready = connection;

    /// <summary>A connection that writes, and holds the lock.</summary>
    internal NpgsqlConnection Connect()
    {
        var connection = new NpgsqlConnection(_settings);
        try
        {
            connection.Open();
            WriterLock.Take(connection, place.Name);
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <summary>
    /// Finds out what became of a transaction whose connection broke while it was being committed: asks the server itself, on a new
    /// connection, for a few seconds.
    /// </summary>
    /// <param name="doubt">The transaction.</param>
    /// <param name="broken">What broke.</param>
    /// <returns>A new connection; the transaction was kept.</returns>
    /// <exception cref="NpgsqlException">
    /// It was not kept, or the server could not be reached: then whatever was kept of it is taken back before anything else is written.
    /// </exception>
    internal NpgsqlConnection AfterBrokenCommit(Doubt doubt, NpgsqlException broken)
    {
        var from = clock.GetTimestamp();
        while (true)
        {
            try
            {
                var connection = Connect();
                if (doubt.WasKept(connection))
                {
                    return connection;
                }

                connection.Dispose();
                throw broken;
            }
            catch (Exception exception) when (exception != broken && exception is NpgsqlException or StoreUnavailableException or TimeoutException)
            {
                // The server may hold the lock of the broken connection for a moment yet.
                if (clock.GetElapsedTime(from) >= AsksFor)
                {
                    _doubt = doubt;
                    throw broken;
                }

                // On the writer's own thread, which has nothing else to do.
                Task.Delay(TimeSpan.FromMilliseconds(100), clock).GetAwaiter().GetResult();
            }
        }
    }
}
