using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Store;
using AimTrainer.Store.Postgres;
using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Chain.Tests;

/// <summary>What came of a program, against numbers worked out by hand and by SQL. The people and their shots are invented.</summary>
[Collection(PostgresCollection.Name)]
public sealed class ProgramOutcomeTests(PostgresServer server) : IDisposable
{
    private static readonly DateOnly Monday = new(2026, 1, 5);
    private readonly PostgresChain _chain = PostgresChain.Open(FreshChain.Of(server), TimeProvider.System);

    [Fact]
    public async Task ProgramOutcome_SixPeople_IsAsWorkedOutByHandAndBySql()
    {
        // Three weeks from 5 January: a test, practice, the test again; one session may be made up within 7 days. Misses in boards.
        await PersonAsync("p0", ("test", 5, 2, 9), ("practice", 13, 0, 0), ("test", 20, 1, 9));
        await PersonAsync("p1", ("test", 6, 3, 1), ("test", 21, 2.5, 1), ("practice", 22, 0, 0));
        await PersonAsync("p2", ("test", 7, 2, 5), ("test", 25, 1.2, 5));
        await PersonAsync("p3", ("test", 5, 1, 10), ("practice", 12, 0, 0), ("test", 24, 1.3, 10));
        await PersonAsync("p4", ("test", 8, 4, 9), ("practice", 14, 0, 0), ("test", 26, 3, 5));
        await PersonAsync("p5", ("test", 9, 5, 1));
        await SessionAsync("North", "p5", "test", 20, 0.1, 10, simulated: true);
        await SessionAsync("North", "p5", "test", 20, 0.1, 10, ended: false);
        await EnrolAsync("p0", "p1", "p2", "p3", "p4", "p5", "never threw");

        var outcome = await OutcomeAsync(new DateOnly(2026, 3, 1));

        Assert.Equal((1, 7, 6), (outcome.Groups, outcome.Joined, outcome.People));
        Assert.Equal((13, 2, 3, 0, 4), (outcome.Done, outcome.MadeUp, outcome.Missed, outcome.Open, outcome.Complete));

        // Shares 1, 1, 2/3, 1, 1, 1/3: mean 0.8333, deviation 0.2789, t(5) 2.5706: 0.8333 ± 0.2927, and no share is above 1.
        Assert.Equal((0.8333, 0.5407, 1.0), (Math.Round(outcome.DoneShare.Value!.Value, 4), Math.Round(outcome.DoneShare.Low!.Value, 4), outcome.DoneShare.High!.Value));

        // The goal is 0.5. Of ten, nine held have the limits 0.60 to 0.98, one 0.02 to 0.40, five 0.24 to 0.76. Source: Wilson 1927, with a calculator.
        Assert.Equal((5, 3, 3, 0), (outcome.GoalsReached, outcome.GoalsNotYet, outcome.GoalsCannotTell, outcome.GoalsNotKnown));

        // Last less first: -1, -0.5, -0.8, 0.3, -1: mean -0.6, deviation 0.5431, t(4) 2.7764: ± 0.6744.
        Assert.Equal((5, 2.4, 1.8), (outcome.Tested, Math.Round(outcome.FirstMissBoards!.Value, 12), Math.Round(outcome.LastMissBoards!.Value, 12)));
        Assert.Equal((-0.6, -1.2744, 0.0744), (Math.Round(outcome.ChangeBoards.Value!.Value, 12), Math.Round(outcome.ChangeBoards.Low!.Value, 4), Math.Round(outcome.ChangeBoards.High!.Value, 4)));
        Assert.Equal(0.8, outcome.Better.Value);

        const string Real =
            """
            WITH real AS (
                SELECT bowlers.name, sessions.started_at::date AS day, sessions.key, drills.drill_id
                FROM chain.sessions JOIN chain.bowlers ON bowlers.id = bowler_id JOIN chain.drills ON hash = drill_hash WHERE NOT simulated AND ended_at IS NOT NULL),
            tests AS (
                SELECT real.name, day, sum(sum_of_sizes) / sum(graded) AS miss FROM real JOIN chain.sums ON session_key = real.key AND kind = 'test'
                WHERE drill_id = 'test' AND (day BETWEEN '2026-01-05' AND '2026-01-11' OR day BETWEEN '2026-01-19' AND '2026-02-01') GROUP BY real.name, day),
            ends AS (SELECT (array_agg(miss ORDER BY day))[1] AS first, (array_agg(miss ORDER BY day DESC))[1] AS last FROM tests GROUP BY name HAVING count(*) > 1)
            """;
        Assert.Equal(outcome.ChangeBoards.Value.Value, server.Ask<double>(FreshChain.Database, $"{Real} SELECT avg(last - first) FROM ends"), 1e-12);
        Assert.Equal(outcome.Tested, server.Ask<long>(FreshChain.Database, $"{Real} SELECT count(*) FROM ends"));
        Assert.Equal(outcome.Done, server.Ask<long>(
            FreshChain.Database,
            $"""
            {Real} SELECT count(*) FROM real WHERE drill_id = 'test' AND (day BETWEEN '2026-01-05' AND '2026-01-11' OR day BETWEEN '2026-01-19' AND '2026-01-25')
                OR drill_id = 'practice' AND day BETWEEN '2026-01-12' AND '2026-01-18'
            """));
    }

    [Fact]
    public async Task ProgramOutcome_InTheSecondWeek_LeavesOpenWhatIsNotOver()
    {
        await PersonAsync("p0", ("test", 5, 2, 9));
        await EnrolAsync("p0");

        var outcome = await OutcomeAsync(new DateOnly(2026, 1, 14));

        Assert.Equal((1, 0, 0, 2, 0), (outcome.Done, outcome.MadeUp, outcome.Missed, outcome.Open, outcome.Complete));
        Assert.Contains("1 people had a session that is over; known from 5 on", outcome.DoneShare.Why, StringComparison.Ordinal);
        Assert.Null(outcome.FirstMissBoards);
        Assert.Null(outcome.ChangeBoards.Value);
        Assert.Equal(0, (await OutcomeAsync(new DateOnly(2026, 1, 14), since: Monday.AddDays(1))).Groups);
        Assert.Equal(0, (await OutcomeAsync(new DateOnly(2026, 1, 14), program: "another")).Groups);
    }

    [Fact]
    public async Task ProgramOutcome_PersonOfTwoCenters_IsOne()
    {
        await PersonAsync("p0", ("test", 5, 2, 9), ("practice", 13, 0, 0));
        await SessionAsync("South", "guest", "test", 20, 1, 9);
        await EnrolAsync("p0");
        Assert.Equal(1, (await OutcomeAsync(new DateOnly(2026, 3, 1))).Missed);

        await _chain.LinkAsync("Demo person", "North", "p0", Cancel);
        await _chain.LinkAsync("Demo person", "South", "guest", Cancel);

        var outcome = await OutcomeAsync(new DateOnly(2026, 3, 1));
        Assert.Equal((1, 3, 0, 1), (outcome.People, outcome.Done, outcome.Missed, outcome.Tested));
        Assert.Equal(-1, outcome.LastMissBoards - outcome.FirstMissBoards);
    }

    [Fact]
    public async Task TakeGroups_GroupsThatAreGone_StayOnlyWhenTheyAreOver()
    {
        await PersonAsync("p0", ("test", 5, 2, 9));
        await EnrolAsync("p0");
        var center = await CenterAsync("North");
        var coming = Request("p0") with { Groups = [new DeliveredGroup("later", "accuracy", new DateOnly(2999, 1, 1), [])] };

        await _chain.TakeGroupsAsync(center, coming, Cancel);
        Assert.Equal(["class", "later"], await _chain.AskAsync(tables => tables.Groups.OrderBy(group => group.Id).Select(group => group.Id).ToListAsync(Cancel), Cancel));
        await _chain.TakeGroupsAsync(center, Request("p0") with { Groups = [] }, Cancel);
        Assert.Equal(["class"], await _chain.AskAsync(tables => tables.Groups.Select(group => group.Id).ToListAsync(Cancel), Cancel));

        // Told again, it is as it is now: nobody is in it any more.
        await _chain.TakeGroupsAsync(center, Request(), Cancel);
        Assert.Equal(0, await _chain.AskAsync(tables => tables.Enrolments.CountAsync(Cancel), Cancel));
    }

    [Fact]
    public async Task TakeGroups_ProgramThatCannotBeRead_ChangesNothing()
    {
        await PersonAsync("p0", ("test", 5, 2, 9));
        await EnrolAsync("p0");
        var broken = Request() with { Programs = [new DeliveredProgram("accuracy", "{}")] };
        await Assert.ThrowsAsync<JsonException>(async () => await _chain.TakeGroupsAsync(await CenterAsync("North"), broken, Cancel));
        Assert.Equal(1, await _chain.AskAsync(tables => tables.Enrolments.CountAsync(Cancel), Cancel));
    }

    public void Dispose() => _chain.Dispose();

    private static ProgramScript Program()
    {
        PlannedDrill test = new("test", null, [new LevelGoal("new", 0.5), new LevelGoal("steady", 0.9)]);
        return new ProgramScript
        {
            Id = "accuracy",
            Name = "Accuracy",
            Purpose = "Invented for a test",
            WhoFor = "Nobody",
            Joining = new ProgramJoining("Anybody", MinorsRule.Yes, null),
            MakeUp = new ProgramMakeUp(7, 1),
            Levels = [new ProgramLevel("new", "new"), new ProgramLevel("steady", "steady")],
            Weeks =
            [
                new PlannedWeek("one", [new PlannedSession("first test", true, [test])]),
                new PlannedWeek("two", [new PlannedSession("practice", false, [new PlannedDrill("practice", null, [])])]),
                new PlannedWeek("three", [new PlannedSession("last test", true, [test])]),
            ],
        };
    }

    private static GroupsRequest Request(params string[] members) => new(
        SyncFormat.Messages, SyncFormat.Events, [new DeliveredProgram("accuracy", JsonSerializer.Serialize(Program(), DomainJson.Options))],
        [new DeliveredGroup("class", "accuracy", Monday, members.Select(member => new DeliveredMember(member, "new")).ToValueList())]);

    private Task<ProgramOutcome> OutcomeAsync(DateOnly today, DateOnly? since = null, string program = "accuracy") =>
        _chain.AskAsync(tables => tables.ProgramOutcomeAsync(program, since ?? new DateOnly(2026, 1, 1), new DateOnly(2027, 1, 1), today, Cancel), Cancel);

    private async Task EnrolAsync(params string[] members) => await _chain.TakeGroupsAsync(await CenterAsync("North"), Request(members), Cancel);

    private async Task PersonAsync(string name, params (string Drill, int January, double Miss, int Held)[] sessions)
    {
        foreach (var (drill, january, miss, held) in sessions)
        {
            await SessionAsync("North", name, drill, january, miss, held);
        }
    }

    private async Task<ChainCenter> CenterAsync(string name)
    {
        await _chain.AddCenterAsync(name, Cancel);
        return await _chain.AskAsync(tables => tables.Centers.Where(center => center.Name == name).Select(center => new ChainCenter(center.Id, center.Name)).SingleAsync(Cancel), Cancel);
    }

    /// <summary>A session: ten test shots of one size of miss, or none; and ten training shots that no report of tests may count.</summary>
    private async Task SessionAsync(string center, string bowler, string drill, int january, double miss, int held, bool simulated = false, bool ended = true)
    {
        var at = await CenterAsync(center);
        await _chain.AskAsync(
            async tables =>
            {
                if (!await tables.Drills.AnyAsync(row => row.Hash == drill, Cancel))
                {
                    tables.Drills.Add(new ChainDrillRow { Hash = drill, DrillId = drill, Name = drill, Json = "{}" });
                }

                var who = await tables.Bowlers.SingleOrDefaultAsync(row => row.CenterId == at.Id && row.Name == bowler, Cancel)
                    ?? tables.Bowlers.Add(new ChainBowlerRow { CenterId = at.Id, Name = bowler, Key = NameKey.Of(bowler) }).Entity;
                await tables.SaveChangesAsync(Cancel);
                var start = new DateTimeOffset(2026, 1, 1, 18, 0, 0, TimeSpan.Zero).AddDays(january - 1);
                var session = new ChainSessionRow
                {
                    CenterId = at.Id,
                    Id = Guid.NewGuid().ToString("N"),
                    Station = 1,
                    StartedAt = start,
                    EndedAt = ended ? start.AddHours(1) : null,
                    BowlerId = who.Id,
                    Hand = "right",
                    DrillHash = drill,
                    LaneName = "lane",
                    SetupJson = "{}",
                    Simulated = simulated,
                    LastSequence = 1,
                    Shots = 20,
                    Points = 0,
                };
                tables.Sessions.Add(session);
                await tables.SaveChangesAsync(Cancel);
                tables.Sums.Add(Sum(session.Key, 0, "training", 99, 10));
                if (drill == "test")
                {
                    tables.Sums.Add(Sum(session.Key, 1, "test", miss, held));
                }

                await tables.SaveChangesAsync(Cancel);
                return true;
            },
            Cancel);
    }

    private static SumRow Sum(long session, int run, string kind, double miss, int held) => new()
    {
        SessionKey = session,
        Run = run,
        Name = "arrows",
        DistanceFeet = 15,
        Kind = kind,
        Shots = 10,
        Graded = 10,
        Held = held,
        SumOfMisses = 0,
        SumOfSizes = 10 * miss,
        SumOfSquares = 10 * miss * miss,
    };
}
