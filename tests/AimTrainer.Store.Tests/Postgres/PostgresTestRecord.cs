using AimTrainer.Store.Postgres;
using Npgsql;

namespace AimTrainer.Store.Tests;

/// <summary>The server's one record, emptied.</summary>
internal sealed class PostgresTestRecord : TestRecord
{
    private readonly PostgresPlace _place;
    private PostgresSessionStore _store;

    public PostgresTestRecord(PostgresServer server)
    {
        _place = server.Place("contract");
        _store = PostgresSessionStore.Open(_place, TimeProvider.System);
        server.Run("contract", "TRUNCATE aimtrainer.bowlers, aimtrainer.drills RESTART IDENTITY CASCADE");
    }

    public override IRecordStore Store => _store;

    public override RecordContext Tables()
    {
        // Not from the pool: there may be one that a test of faults has ended from the other side.
        var connection = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(_place.ForReading("aimtrainer")) { Pooling = false }.ConnectionString);
        connection.Open();
        return PostgresDatabase.ContextOver(connection, owns: true);
    }

    public override void Reopen()
    {
        _store.Dispose();
        _store = PostgresSessionStore.Open(_place, TimeProvider.System);
    }

    public override void Dispose() => _store.Dispose();
}
