using System.Data.Common;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public sealed class ListingTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly OpenRecord _record;

    public ListingTests() => _record = new OpenRecord(_folder.Path);

    [Fact]
    public async Task ListAsync_NoFilter_GivesNewestFirstWithTheirTotals()
    {
        await KeepAsync(_record.Store, Setup("old"), Shot(10), Shot(10));
        await KeepAsync(_record.Store, Setup("new") with { At = Start.AddDays(1), Simulated = true, Station = 8 });
        await KeepAsync(_record.Store, Setup("older") with { At = Start.AddTicks(-1) });
        await _record.Store.AppendAsync("old", Ended(4), Cancel);

        var listing = await _record.Store.ListAsync(new SessionFilter(), Cancel);
        Assert.Equal(
            [
                new SessionListing("new", Start.AddDays(1), 8, "Ann Lee", "arrow-narrowing", "Narrowing at one arrow", 0, 0, false, true),
                new SessionListing("old", Start, 7, "Ann Lee", "arrow-narrowing", "Narrowing at one arrow", 2, 6, true, false),
                new SessionListing("older", Start.AddTicks(-1), 7, "Ann Lee", "arrow-narrowing", "Narrowing at one arrow", 0, 0, false, false),
            ],
            listing);
    }

    [Fact]
    public async Task ListAsync_TimesWithManyFractions_SortsByTheMoment()
    {
        // Text sorts by character: moments with and without fractions, and with another offset, must not get out of order.
        TimeSpan[] after = [TimeSpan.Zero, TimeSpan.FromTicks(1), TimeSpan.FromMilliseconds(100), TimeSpan.FromSeconds(1), TimeSpan.FromHours(30)];
        var whole = new DateTimeOffset(2026, 9, 30, 23, 59, 59, TimeSpan.Zero);
        for (var i = 0; i < after.Length; i++)
        {
            await _record.Store.CreateAsync(
                Setup($"s{i}") with { At = (whole + after[i]).ToOffset(TimeSpan.FromHours(i % 2 == 0 ? -9 : 9)) }, Drill(), Cancel);
        }

        Assert.Equal(["s4", "s3", "s2", "s1", "s0"], (await _record.Store.ListAsync(new SessionFilter(), Cancel)).Select(line => line.SessionId));
    }

    [Theory]
    [InlineData("ANN lee", null, null, 100, "s4 s2 s1")]
    [InlineData("  ann   LEE ", null, true, 100, "s2")]
    [InlineData(null, 2, null, 100, "s4 s3")]
    [InlineData("ann lee", 2, false, 100, "s4")]
    [InlineData(null, null, false, 2, "s4 s3")]
    [InlineData(null, null, true, 100, "s2")]
    [InlineData("nobody", null, null, 100, "")]
    public async Task ListAsync_Filter_GivesThoseOnly(string? bowler, int? station, bool? ended, int limit, string expected)
    {
        await KeepAsync(_record.Store, Setup("s1") with { Station = 1 });
        await KeepAsync(_record.Store, Setup("s2", "ann lee") with { Station = 1, At = Start.AddHours(1) });
        await _record.Store.AppendAsync("s2", Ended(2), Cancel);
        await KeepAsync(_record.Store, Setup("s3", "Bo") with { Station = 2, At = Start.AddHours(2) });
        await KeepAsync(_record.Store, Setup("s4", "ANN LEE") with { Station = 2, At = Start.AddHours(3) });

        var listing = await _record.Store.ListAsync(new SessionFilter { Bowler = bowler, Station = station, Ended = ended, Limit = limit }, Cancel);
        Assert.Equal(expected, string.Join(' ', listing.Select(line => line.SessionId)));
        Assert.All(listing, line => Assert.Equal(line.SessionId == "s3" ? "Bo" : "Ann Lee", line.Bowler));
    }

    [Fact]
    public async Task ListAsync_LimitBelowOne_Throws() =>
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => _record.Store.ListAsync(new SessionFilter { Limit = 0 }, Cancel));

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
