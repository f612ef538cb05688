using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.EntityFrameworkCore.Migrations.Operations;

namespace AimTrainer.Store.Sqlite;

/// <summary>
/// Makes the tables with short rows that are found by their key WITHOUT ROWID: the rows lie in the key's own tree, which spares
/// each shot two pages to flush. EF has no word for it. The log's rows are too long for that.
/// </summary>
/// <param name="dependencies">What EF gives its generators.</param>
/// <param name="migrationsAnnotations">What EF gives its generators.</param>
internal sealed class RecordTables(MigrationsSqlGeneratorDependencies dependencies, IRelationalAnnotationProvider migrationsAnnotations)
    : SqliteMigrationsSqlGenerator(dependencies, migrationsAnnotations)
{
    /// <inheritdoc/>
    protected override void Generate(CreateTableOperation operation, IModel? model, MigrationCommandListBuilder builder, bool terminate = true)
    {
        base.Generate(operation, model, builder, terminate: false);

        // EF changes a table by making a new one under another name.
        if (operation.Name is "graded_shots" or "shot_targets" or "ef_temp_graded_shots" or "ef_temp_shot_targets")
        {
            builder.Append(" WITHOUT ROWID");
        }

        if (terminate)
        {
            builder.AppendLine(Dependencies.SqlGenerationHelper.StatementTerminator);
            EndStatement(builder);
        }
    }
}
