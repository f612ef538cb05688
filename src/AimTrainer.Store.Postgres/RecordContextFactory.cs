using Microsoft.EntityFrameworkCore.Design;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>For the tool that writes migrations, which needs no server; the program does not use it.</summary>
internal sealed class RecordContextFactory : IDesignTimeDbContextFactory<RecordContext>
{
    /// <inheritdoc/>
    public RecordContext CreateDbContext(string[] args) => PostgresDatabase.ContextOver(new NpgsqlConnection("Host=none"), owns: true);
}
