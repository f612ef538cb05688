using Microsoft.EntityFrameworkCore.Design;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>For the tool that writes migrations, which needs no server; the program does not use it.</summary>
internal sealed class ChainContextFactory : IDesignTimeDbContextFactory<ChainContext>
{
    /// <inheritdoc/>
    public ChainContext CreateDbContext(string[] args) => PostgresDatabase.ChainOver(new NpgsqlConnection("Host=none"), owns: true);
}
