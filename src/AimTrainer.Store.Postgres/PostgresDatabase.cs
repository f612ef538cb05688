using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;

namespace AimTrainer.Store.Postgres;

/// <summary>Makes contexts of the record over PostgreSQL.</summary>
internal static class PostgresDatabase
{
    /// <summary>Where EF keeps which migrations were applied.</summary>
    public const string History = "__EFMigrationsHistory";

    /// <summary>A context over a connection, which it disposes of with itself when it owns it.</summary>
    public static RecordContext ContextOver(DbConnection connection, bool owns = false) =>
        new(Options().UseNpgsql(connection, owns, npgsql => npgsql
            .MigrationsAssembly(typeof(PostgresDatabase).Assembly)
            .MigrationsHistoryTable(History, PostgresModel.Schema)).Options);

    /// <summary>A context of a chain's tables over a connection, which it disposes of with itself when it owns it.</summary>
    public static ChainContext ChainOver(DbConnection connection, bool owns = false) =>
        new(new DbContextOptionsBuilder<ChainContext>().UseNpgsql(connection, owns, npgsql => npgsql
            .MigrationsAssembly(typeof(PostgresDatabase).Assembly)
            .MigrationsHistoryTable(History, ChainContext.Schema)).Options);

    private static DbContextOptionsBuilder<RecordContext> Options() =>
        new DbContextOptionsBuilder<RecordContext>().ReplaceService<IModelCustomizer, PostgresModel>();
}
