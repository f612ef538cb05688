using AimTrainer.Store.Postgres;
using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Chain.Tests;

[Collection(PostgresCollection.Name)]
public sealed class ChainReportTests(PostgresServer server) : IDisposable
{
    private readonly PostgresChain _chain = PostgresChain.Open(FreshChain.Of(server), TimeProvider.System);
    private int _made;

    [Fact]
    public async Task Across_TwoCentersOfAPerson_AddUpByMonth()
    {
        var (north, south) = (await BowlerAsync("North", "Ann Lee"), await BowlerAsync("South", "A. Lee"));
        await SessionAsync(north, At(2026, 3, 5), "training", 1, -1, 0.5);
        await SessionAsync(north, At(2026, 3, 9), "test", 2, 2);
        await SessionAsync(south, At(2026, 4, 1), "training", 4);
        await SessionAsync(south, At(2026, 4, 2), "training", simulated: true, 9, 9, 9);
        Assert.True(await _chain.LinkAsync("Ann", "North", "ann lee", Cancel));
        Assert.True(await _chain.LinkAsync("Ann", "South", "a. lee", Cancel));
        Assert.False(await _chain.LinkAsync("Ann", "South", "nobody", Cancel));

        var lines = await _chain.AskAsync(async tables => await tables.AcrossAsync(await tables.BowlersOfAsync(null, "Ann", Cancel), Cancel), Cancel);
        Assert.Equal([(3, "North", 2, 5L), (4, "South", 1, 1L)], lines.Select(line => (line.Month.Month, line.Center, line.Sessions, line.Graded)));

        // By hand: sizes 1, 1, 0.5, 2, 2 have the mean 1.3, deviation 0.6708, t(4) 2.776: 1.3 ± 0.8329. Held are misses within 1: 3 of 5,
        // Wilson 0.2307 to 0.8824. Source: Wilson 1927, worked out with a calculator.
        Assert.Equal(1.3, lines[0].MissBoards.Value!.Value, 1e-12);
        Assert.Equal((0.4671, 2.1329), (Math.Round(lines[0].MissBoards.Low!.Value, 4), Math.Round(lines[0].MissBoards.High!.Value, 4)));
        Assert.Equal((0.6, 0.2307, 0.8824), (lines[0].HitRate.Value, Math.Round(lines[0].HitRate.Low!.Value, 4), Math.Round(lines[0].HitRate.High!.Value, 4)));
        Assert.Null(lines[1].MissBoards.Low);
        Assert.Single((await _chain.AskAsync(async tables => await tables.AcrossAsync(await tables.BowlersOfAsync("South", "A. LEE", Cancel), Cancel), Cancel)).AsEnumerable());
    }

    [Fact]
    public async Task Outcome_FirstAgainstLastOfEachOne_IsAPairedDifferenceWithLimits()
    {
        // Differences last - first: -1, -2, -1.5, 0.5, -1: mean -1, deviation 0.9354, t(4) 2.776: ± 1.1615.
        (double First, double Last)[] people = [(3, 2), (4, 2), (2.5, 1), (1, 1.5), (2, 1)];
        foreach (var (first, last) in people)
        {
            var bowler = await BowlerAsync("North", $"bowler {_made}");
            await SessionAsync(bowler, At(2026, 1, 5), "test", first);
            await SessionAsync(bowler, At(2026, 2, 5), "test", 99);
            await SessionAsync(bowler, At(2026, 3, 5), "training", 50);
            await SessionAsync(bowler, At(2026, 3, 6), "test", last, -last);
        }

        await SessionAsync(await BowlerAsync("North", "once only"), At(2026, 1, 5), "test", 7);
        var outcome = await OutcomeAsync(At(2026, 1, 1), At(2027, 1, 1));
        Assert.Equal((5, 15L, 2.5, 1.5), (outcome.People, outcome.Sessions, outcome.FirstMissBoards, outcome.LastMissBoards));
        Assert.Equal((-1.0, -2.1615, 0.1615), (outcome.ChangeBoards.Value!.Value, Math.Round(outcome.ChangeBoards.Low!.Value, 4), Math.Round(outcome.ChangeBoards.High!.Value, 4)));
        Assert.Equal(0.8, outcome.Better.Value);

        var shorter = await OutcomeAsync(At(2026, 3, 1), At(2027, 1, 1));
        Assert.Equal(0, shorter.People);
        Assert.Null(shorter.ChangeBoards.Value);
        Assert.Contains("known from 5 on", shorter.ChangeBoards.Why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Outcome_BowlersOfOnePerson_CountOnce()
    {
        for (var i = 0; i < 5; i++)
        {
            var (here, there) = (await BowlerAsync("North", $"p{i}"), await BowlerAsync("South", $"q{i}"));
            await SessionAsync(here, At(2026, 1, 5), "test", 3);
            await SessionAsync(there, At(2026, 2, 5), "test", 2 + (i / 10.0));
            await _chain.LinkAsync($"person {i}", "North", $"p{i}", Cancel);
            await _chain.LinkAsync($"person {i}", "South", $"q{i}", Cancel);
        }

        var outcome = await OutcomeAsync(At(2026, 1, 1), At(2027, 1, 1));
        Assert.Equal((5, 10L), (outcome.People, outcome.Sessions));
        Assert.Equal(-0.8, outcome.ChangeBoards.Value!.Value, 1e-12);
    }

    [Fact]
    public async Task Cohorts_ByFirstMonth_CountThoseWhoCameBackAndLeaveOpenMonthsUnknown()
    {
        for (var i = 0; i < 10; i++)
        {
            var bowler = await BowlerAsync("North", $"b{i}");
            await SessionAsync(bowler, At(2026, 1, 31), "training", 1);
            await SessionAsync(bowler, At(2026, 1, 2), "training", 1);
            if (i < 4)
            {
                await SessionAsync(bowler, At(2026, 3, 1), "training", 1);
            }
        }

        var lines = await _chain.AskAsync(tables => tables.CohortsAsync(At(2025, 1, 1), At(2027, 1, 1), At(2026, 5, 15), Cancel), Cancel);
        Assert.Equal([(1, 0), (2, 4), (3, 0), (4, null), (5, null), (6, null)], lines.Select(line => (line.MonthsLater, line.Returned)));
        Assert.All(lines, line => Assert.Equal((10, At(2026, 1, 1)), (line.People, line.Month)));
        Assert.Equal(0.4, lines[1].Share.Value);
        Assert.Contains("not over", lines[3].Share.Why, StringComparison.Ordinal);
    }

    public void Dispose() => _chain.Dispose();

    private static DateTimeOffset At(int year, int month, int day) => new(year, month, day, 0, 0, 0, TimeSpan.Zero);

    private Task<DrillOutcome> OutcomeAsync(DateTimeOffset from, DateTimeOffset to) => _chain.AskAsync(tables => tables.OutcomeAsync("drill", from, to, Cancel), Cancel);

    private async Task<(int Center, long Bowler)> BowlerAsync(string center, string name)
    {
        await _chain.AddCenterAsync(center, Cancel);
        _made++;
        return await _chain.AskAsync(
            async tables =>
            {
                var id = await tables.Centers.Where(row => row.Name == center).Select(row => row.Id).SingleAsync(Cancel);
                var bowler = new ChainBowlerRow { CenterId = id, Name = name, Key = name.ToUpperInvariant() };
                tables.Bowlers.Add(bowler);
                await tables.SaveChangesAsync(Cancel);
                return (id, bowler.Id);
            },
            Cancel);
    }

    private Task SessionAsync((int Center, long Bowler) who, DateTimeOffset at, string kind, params double[] misses) => SessionAsync(who, at, kind, false, misses);

    private Task SessionAsync((int Center, long Bowler) who, DateTimeOffset at, string kind, bool simulated, params double[] misses) => _chain.AskAsync(
        async tables =>
        {
            if (!await tables.Drills.AnyAsync(Cancel))
            {
                tables.Drills.Add(new ChainDrillRow { Hash = "00", DrillId = "drill", Name = "Drill", Json = "{}" });
            }

            var session = new ChainSessionRow
            {
                CenterId = who.Center,
                Id = Guid.NewGuid().ToString("N"),
                Station = 1,
                StartedAt = at,
                BowlerId = who.Bowler,
                Hand = "right",
                DrillHash = "00",
                LaneName = "lane",
                SetupJson = "{}",
                Simulated = simulated,
                LastSequence = 1,
                Shots = misses.Length,
                Points = 0,
            };
            tables.Sessions.Add(session);
            await tables.SaveChangesAsync(Cancel);
            tables.Sums.Add(new SumRow
            {
                SessionKey = session.Key,
                Run = 0,
                Name = "arrows",
                DistanceFeet = 15,
                Kind = kind,
                Shots = misses.Length,
                Graded = misses.Length,
                Held = misses.Count(miss => Math.Abs(miss) <= 1),
                SumOfMisses = misses.Sum(),
                SumOfSizes = misses.Sum(Math.Abs),
                SumOfSquares = misses.Sum(miss => miss * miss),
            });
            return await tables.SaveChangesAsync(Cancel);
        },
        Cancel);
}
