using Microsoft.EntityFrameworkCore.Design;

namespace AimTrainer.Store.Sqlite;

/// <summary>For the tool that writes migrations; the program does not use it.</summary>
internal sealed class RecordContextFactory : IDesignTimeDbContextFactory<RecordContext>
{
    /// <inheritdoc/>
    public RecordContext CreateDbContext(string[] args) => SqliteDatabase.ContextOver(new("Data Source=:memory:"));
}
