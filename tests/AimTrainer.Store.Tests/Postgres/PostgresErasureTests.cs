using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

/// <summary>What PostgreSQL needs beside the contract.</summary>
[Collection(PostgresCollection.Name)]
public sealed class PostgresErasureTests(PostgresServer server) : IDisposable
{
    private readonly PostgresTestRecord _record = new(server);
    private readonly TemporaryFolder _folder = new();

    [Fact]
    public async Task EraseBowlerAsync_RowsOfEveryTable_AreFreedByAVacuum()
    {
        await KeepAsync(_record.Store, Setup(), Shot(), Shot());
        await _record.Store.AppendAsync("s1", Ended(4), Cancel);
        var before = Vacuumed();

        await new RecordErasure(_record.Store, _folder.Path, TimeProvider.System).EraseBowlerAsync("Ann Lee", Cancel);

        Assert.Equal(["ball_surfaces", "balls", "bowlers", "graded_shots", "log_steps", "sessions", "shot_targets"], Vacuumed().Except(before).Select(one => one.Split(' ')[0]));
        Assert.Equal(0, server.Ask<long>("contract", "SELECT sum(n_dead_tup)::bigint FROM pg_stat_user_tables WHERE schemaname = 'aimtrainer'"));
    }

    [Fact]
    public async Task EraseBeforeAsync_NothingSoOld_VacuumsNothing()
    {
        await KeepAsync(_record.Store, Setup(), Shot());
        var before = Vacuumed();

        Assert.Null(await new RecordErasure(_record.Store, _folder.Path, TimeProvider.System).EraseBeforeAsync(Start, Cancel));

        Assert.Equal(before, Vacuumed());
    }

    public void Dispose()
    {
        _record.Dispose();
        _folder.Dispose();
    }

    private List<string> Vacuumed() =>
        [.. server.Ask<string>("contract", "SELECT string_agg(relname || ' ' || vacuum_count, ',' ORDER BY relname) FROM pg_stat_user_tables WHERE schemaname = 'aimtrainer'").Split(',')];
}
