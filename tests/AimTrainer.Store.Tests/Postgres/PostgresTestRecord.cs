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
        var connection = new NpgsqlConnection(_place.ForReading("aimtrainer"));
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
