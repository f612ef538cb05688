using System.Data.Common;
using AimTrainer.Sessions;
using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public sealed class SqlitePracticeTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly OpenRecord _record;

    public SqlitePracticeTests() => _record = new OpenRecord(_folder.Path);

    [Fact]
    public async Task Questions_OfManyBowlers_FindTheirRowsByKey()
    {
        await Task.WhenAll(Enumerable.Range(0, 400).Select(i => KeepAsync(_record.Store, Setup($"s{i}", $"bowler {i % 40}") with { At = Start.AddMinutes(i) }, Shot(10))));

        using var tables = _record.Tables();
        var scope = (await tables.FindScopeAsync(new PracticeFilter("bowler 7", Start, Start.AddYears(1)), Cancel))!;
        AssertByKey(tables.PracticeSessions(scope), 0);
        AssertByKey(tables.PracticeSums(scope), 2);
        AssertByKey(tables.NewestCrossings(scope, 100), 2);
        Assert.Equal(20, tables.PracticeSums(scope).Count());
    }

    public void Dispose()
    {
        _record.Dispose();
        _folder.Dispose();
    }

    // No table is read from end to end: the bowler's sessions are found by index, their shots and targets by their keys.
    private static void AssertByKey<T>(IQueryable<T> query, int tables)
    {
        using DbCommand command = query.CreateDbCommand();
        command.CommandText = "EXPLAIN QUERY PLAN " + command.CommandText;
        var plan = new List<string>();
        using (var reader = command.ExecuteReader())
        {
            while (reader.Read())
            {
                plan.Add(reader.GetString(3));
            }
        }

        var text = string.Join("; ", plan);
        Assert.Contains("IX_sessions_bowler_id_started_at", text, StringComparison.Ordinal);
        var derived = plan.Where(step => step.StartsWith("CO-ROUTINE", StringComparison.Ordinal)).Select(step => step.Replace("CO-ROUTINE", "SCAN", StringComparison.Ordinal));
        Assert.Empty(plan.Where(step => step.StartsWith("SCAN", StringComparison.Ordinal)).Except(derived));
        Assert.Equal(
            tables,
            plan.Count(step => step.StartsWith("SEARCH", StringComparison.Ordinal) && step.Contains("USING PRIMARY KEY (session_key=?", StringComparison.Ordinal)));
    }
}
