using System.Data.Common;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public sealed class SqliteListingTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly OpenRecord _record;

    public SqliteListingTests() => _record = new OpenRecord(_folder.Path);

    [Fact]
    public async Task Listing_OfAThousandSessions_UsesTheIndexesAndSortsNothing()
    {
        await Task.WhenAll(Enumerable.Range(0, 1000).Select(i => _record.Store.CreateAsync(
            Setup($"s{i}", $"bowler {i % 40}") with { At = Start.AddMinutes(i), Station = i % 64 }, Drill(), Cancel)));

        using var tables = _record.Tables();
        AssertPlan(tables.Listing(new SessionFilter()), "IX_sessions_started_at");
        AssertPlan(tables.Listing(new SessionFilter { Bowler = "Bowler 7" }), "IX_sessions_bowler_id_started_at");
        AssertPlan(tables.Listing(new SessionFilter { Station = 7 }), "IX_sessions_station_started_at");
        AssertPlan(tables.CountingShots(1, Hand.Right), "IX_sessions_bowler_id_started_at");
        AssertPlan(tables.Steps("s7"), "log_steps_1");
        Assert.Equal(25, (await _record.Store.ListAsync(new SessionFilter { Bowler = "BOWLER 7" }, Cancel)).Count);
    }

    public void Dispose()
    {
        _record.Dispose();
        _folder.Dispose();
    }

    private static void AssertPlan<T>(IQueryable<T> query, string index)
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
        Assert.Contains(index, text, StringComparison.Ordinal);
        Assert.False(text.Contains("USE TEMP B-TREE", StringComparison.Ordinal), text);
    }
}
