using AimTrainer.Sessions;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public abstract class ListingContract(TestRecord record) : IDisposable
{
    private readonly TestRecord _record = record;

    [Fact]
    public async Task ListAsync_NoFilter_GivesNewestFirstWithTheirTotals()
    {
        await KeepAsync(_record.Store, Setup("old"), Shot(10), Shot(10));
        await KeepAsync(_record.Store, Setup("new") with { At = Start.AddDays(1), Simulated = true, Station = 8 });
        await KeepAsync(_record.Store, Setup("older") with { At = Start.AddMicroseconds(-1) });
        await _record.Store.AppendAsync("old", Ended(4), Cancel);

        var listing = await _record.Store.ListAsync(new SessionFilter(), Cancel);
        Assert.Equal(
            [
                new SessionListing("new", Start.AddDays(1), 8, "Ann Lee", "arrow-narrowing", "Narrowing at one arrow", 0, 0, false, true),
                new SessionListing("old", Start, 7, "Ann Lee", "arrow-narrowing", "Narrowing at one arrow", 2, 6, true, false),
                new SessionListing("older", Start.AddMicroseconds(-1), 7, "Ann Lee", "arrow-narrowing", "Narrowing at one arrow", 0, 0, false, false),
            ],
            listing);
    }

    [Fact]
    public async Task ListAsync_TimesWithManyFractions_SortsByTheMoment()
    {
        // Text sorts by character: moments with and without fractions, and with another offset, must not get out of order.
        TimeSpan[] after = [TimeSpan.Zero, TimeSpan.FromMicroseconds(1), TimeSpan.FromMilliseconds(100), TimeSpan.FromSeconds(1), TimeSpan.FromHours(30)];
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

    public void Dispose()
    {
        _record.Dispose();
        GC.SuppressFinalize(this);
    }
}
