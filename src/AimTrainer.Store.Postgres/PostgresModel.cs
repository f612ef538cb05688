using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;

namespace AimTrainer.Store.Postgres;

/// <summary>
/// What the record's model needs beside itself in PostgreSQL: a schema of our own, so that a database may be shared with others, and
/// text that sorts by character as in SQLite, whatever language the server was set up for.
/// </summary>
/// <param name="dependencies">What EF gives it.</param>
internal sealed class PostgresModel(ModelCustomizerDependencies dependencies) : RelationalModelCustomizer(dependencies)
{
    /// <summary>The record's schema.</summary>
    public const string Schema = "aimtrainer";

    /// <inheritdoc/>
    public override void Customize(ModelBuilder modelBuilder, DbContext context)
    {
        base.Customize(modelBuilder, context);
        modelBuilder.HasDefaultSchema(Schema);
        foreach (var property in modelBuilder.Model.GetEntityTypes().SelectMany(entity => entity.GetProperties()))
        {
            if ((property.GetProviderClrType() ?? property.GetValueConverter()?.ProviderClrType ?? property.ClrType) == typeof(string))
            {
                property.SetCollation("C");
            }
        }
    }
}
