using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace AimTrainer.Store;

/// <summary>
/// The statements that take rows out of the record with all that hangs on them, the farthest first. They are worked out from the model,
/// so that a table that is added one day is not forgotten; the same for every database.
/// </summary>
internal static class ErasureStatements
{
    /// <summary>The statements, in the order in which they must run.</summary>
    /// <param name="record">The record; only its model is looked at.</param>
    /// <param name="root">The rows' entity, such as <see cref="BowlerRow"/>.</param>
    /// <param name="which">The condition on the rows' table, in SQL; only fixed words and numbers.</param>
    public static IReadOnlyList<string> For(RecordContext record, Type root, string which)
    {
        var statements = new List<string>();
        Add(Root(record, root), which, statements, []);
        return statements;
    }

    /// <summary>The tables that such statements are about.</summary>
    public static IReadOnlyList<string> Tables(RecordContext record, Type root)
    {
        var (tables, next) = (new HashSet<IEntityType>(), new Queue<IEntityType>([Root(record, root)]));
        while (next.TryDequeue(out var entity))
        {
            if (tables.Add(entity))
            {
                foreach (var key in entity.GetReferencingForeignKeys())
                {
                    next.Enqueue(key.DeclaringEntityType);
                }
            }
        }

        return [.. tables.Select(Table)];
    }

    private static IEntityType Root(RecordContext record, Type root) =>
        record.Model.FindEntityType(root) ?? throw new ArgumentException($"{root.Name} is no table of the record", nameof(root));

    private static void Add(IEntityType entity, string which, List<string> statements, Stack<IEntityType> above)
    {
        above.Push(entity);
        foreach (var key in entity.GetReferencingForeignKeys())
        {
            if (!above.Contains(key.DeclaringEntityType))
            {
                var columns = Columns(key.DeclaringEntityType, key.Properties);
                var those = $"({string.Join(", ", columns)}) IN (SELECT {string.Join(", ", Columns(entity, key.PrincipalKey.Properties))} FROM {Table(entity)} WHERE {which})";
                Add(key.DeclaringEntityType, those, statements, above);
            }
        }

        above.Pop();
        statements.Add($"DELETE FROM {Table(entity)} WHERE {which}");
    }

    private static string Table(IEntityType entity) => $"\"{entity.GetTableName()}\"";

    private static IEnumerable<string> Columns(IEntityType entity, IEnumerable<IProperty> properties) =>
        properties.Select(property => $"\"{property.GetColumnName(StoreObjectIdentifier.Table(entity.GetTableName()!, entity.GetSchema()))}\"");
}
