using System.Net;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using AimTrainer.Store;
using AimTrainer.Store.Postgres;
using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Chain.Tests;

[Collection(PostgresCollection.Name)]
public sealed class SyncTests(PostgresServer server) : IAsyncLifetime
{
    private readonly List<TestCenter> _centers = [];
    private ChainServer _chain = null!;

    public async ValueTask InitializeAsync() => _chain = await ChainServer.OpenAsync(FreshChain.Of(server));

    public async ValueTask DisposeAsync()
    {
        _centers.ForEach(center => center.Dispose());
        await _chain.DisposeAsync();
    }

    [Fact]
    public async Task RunAsync_AllThatIsThere_IsEqualOnBothSidesAndNothingWaits()
    {
        var center = await CenterAsync("North");
        await FillAsync(center, "s1", 300);
        await FillAsync(center, "s2", 20, ends: false);
        using var link = center.Link(_chain.Address);
        var state = await center.Sync(link).RunAsync(Cancel);
        Assert.True(state.IsComplete, state.ToString());
        Assert.Equal(("North", 0L, 0, (DateTimeOffset?)null), (state.Center, state.WaitingSteps, state.WaitingSessions, state.WaitingSince));
        await AssertEqualAsync(center);
        Assert.Equal(state, center.Files.ReadState());

        var listed = (await center.Store.ListAsync(new SessionFilter(), Cancel)).AsEnumerable().ToDictionary(session => session.SessionId);
        var there = await _chain.Chain.AskAsync(tables => tables.Sessions.ToListAsync(Cancel), Cancel);
        Assert.All(there, session => Assert.Equal(
            (listed[session.Id].Shots, listed[session.Id].Points, listed[session.Id].Ended, listed[session.Id].Station),
            (session.Shots, session.Points, session.EndedAt is not null, session.Station)));
    }

    [Fact]
    public async Task RunAsync_SumsAtTheChain_AreThoseOfTheCentersOwnRecord()
    {
        var center = await CenterAsync("North");
        await FillAsync(center, "s1", 200);
        using var link = center.Link(_chain.Address);
        await center.Sync(link).RunAsync(Cancel);
        var own = (await center.Store.FindPracticeAsync(new PracticeFilter("Ann Lee"), Cancel))!.Blocks.AsEnumerable().OrderBy(block => block.Target).ToList();
        var sums = await _chain.Chain.AskAsync(tables => tables.Sums.OrderBy(sum => sum.Name).ToListAsync(Cancel), Cancel);
        Assert.Equal(own.Select(block => (block.Target, block.Shots, block.Graded, block.Held)), sums.Select(sum => (sum.Name, sum.Shots, sum.Graded, sum.Held)));
        Assert.All(own.Zip(sums), pair =>
        {
            Assert.Equal(pair.First.SumOfMisses, pair.Second.SumOfMisses, 1e-9);
            Assert.Equal(pair.First.SumOfSizes, pair.Second.SumOfSizes, 1e-9);
            Assert.Equal(pair.First.SumOfSquares, pair.Second.SumOfSquares, 1e-9);
            Assert.Equal("training", pair.Second.Kind);
        });
    }

    [Fact]
    public async Task RunAsync_SessionThatGrows_SendsOnlyWhatIsNew()
    {
        var center = await CenterAsync("North");
        await FillAsync(center, "s1", 30, ends: false);
        using var link = center.Link(_chain.Address);
        var counting = new CountingLink(link);
        var sync = center.Sync(counting);
        await sync.RunAsync(Cancel);
        Assert.Equal(31, counting.Steps);
        await center.StepAsync("s1", new Chance(5));
        await center.EndAsync("s1");
        await sync.RunAsync(Cancel);
        Assert.Equal(33, counting.Steps);
        await sync.RunAsync(Cancel);
        Assert.Equal(33, counting.Steps);
        await AssertEqualAsync(center);
    }

    [Fact]
    public async Task RunAsync_ChainAway_KeepsEverythingSaysSinceWhenAndCatchesUp()
    {
        var center = await CenterAsync("North");
        await FillAsync(center, "s1", 10, ends: false);
        using var proxy = new ChaosProxy(_chain.Address.Port, 1) { IsWell = true };
        using var link = center.Link(proxy.Port);
        var sync = center.Sync(link);
        await sync.RunAsync(Cancel);
        await center.StepAsync("s1", new Chance(1));
        await center.StepAsync("s1", new Chance(2));
        var oldest = (await LogAsync(center.Store, "s1"))[11].Input.At;
        var port = proxy.ServerPort;
        proxy.GoDown();

        var away = await sync.RunAsync(Cancel);
        Assert.Equal((2L, 1, oldest.ToUniversalTime()), (away.WaitingSteps!.Value, away.WaitingSessions!.Value, away.WaitingSince!.Value.ToUniversalTime()));
        Assert.NotNull(away.ErrorAt);
        Assert.Contains("everything is kept here", away.Error, StringComparison.Ordinal);
        Assert.Equal(away, center.Files.ReadState());

        proxy.ServerPort = port;
        Assert.True((await sync.RunAsync(Cancel)).IsComplete);
        await AssertEqualAsync(center);
    }

    [Fact]
    public async Task RunAsync_ChainNeverReached_DoesNotClaimToKnowWhatWaits()
    {
        var center = await CenterAsync("North");
        await FillAsync(center, "s1", 3);
        using var link = center.Link(1);
        var state = await center.Sync(link).RunAsync(Cancel);
        Assert.Equal((null, null), (state.WaitingSteps, state.WaitingSince));
        Assert.NotNull(state.Error);
        Assert.False(state.IsComplete);
    }

    [Fact]
    public async Task RunAsync_TwoCentersWithTheSameNamesAndIds_StayApart()
    {
        var (north, south) = (await CenterAsync("North"), await CenterAsync("South"));
        await FillAsync(north, "s1", 20);
        await FillAsync(south, "s1", 40);
        foreach (var center in (TestCenter[])[north, south])
        {
            using var link = center.Link(_chain.Address);
            Assert.True((await center.Sync(link).RunAsync(Cancel)).IsComplete);
        }

        await AssertEqualAsync(north);
        await AssertEqualAsync(south);
        Assert.Equal(2, await _chain.Chain.AskAsync(tables => tables.Bowlers.CountAsync(bowler => bowler.Key == "ANN LEE"), Cancel));
    }

    [Theory]
    [InlineData("center-ffff")]
    [InlineData("")]
    [InlineData("x y")]
    public async Task Chain_UnknownToken_IsRefusedAndNothingKept(string token)
    {
        using var client = new HttpClient { BaseAddress = _chain.Address };
        using var request = new HttpRequestMessage(HttpMethod.Post, "chain/v1/have") { Content = new StringContent("{}") };
        request.Headers.TryAddWithoutValidation("Authorization", "Bearer " + token);
        using var answer = await client.SendAsync(request, Cancel);
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    [Fact]
    public async Task RunAsync_TokenTakenBack_SaysSoAndKeepsEverything()
    {
        var center = await CenterAsync("North");
        await FillAsync(center, "s1", 3);
        Assert.True(await _chain.Chain.RevokeCenterAsync("North", Cancel));
        using var link = center.Link(_chain.Address);
        var state = await center.Sync(link).RunAsync(Cancel);
        Assert.Contains("token", state.Error, StringComparison.Ordinal);
        Assert.Empty(await _chain.Chain.EventsAsync("North"));
    }

    [Theory]
    [InlineData(99, 1, "bring the chain up to date first")]
    [InlineData(1, 99, "bring the chain up to date first")]
    [InlineData(0, 1, "bring the center up to date")]
    public async Task Chain_CenterOfAnotherVersion_IsRefusedWithWhatToDo(int messages, int events, string words)
    {
        var center = await CenterAsync("North");
        using var link = center.Link(_chain.Address);
        var refused = await Assert.ThrowsAsync<ChainRefusedException>(() => link.HaveAsync(new HaveRequest(messages, events, []), Cancel));
        Assert.Contains(words, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task RunAsync_ChainOfAnotherVersion_IsNotSentTo()
    {
        var center = await CenterAsync("North");
        await FillAsync(center, "s1", 3);
        using var link = center.Link(_chain.Address);
        var counting = new CountingLink(link) { Change = answer => answer with { Messages = 2 } };
        var state = await center.Sync(counting).RunAsync(Cancel);
        Assert.Contains("bring this center up to date first", state.Error, StringComparison.Ordinal);
        Assert.Equal(0, counting.Steps);
    }

    [Fact]
    public async Task RunAsync_StepThatIsAnotherOneAtTheChain_IsSetAsideAndNothingOverwritten()
    {
        // As after the restore of an old backup: the same session went on in two ways.
        var center = await CenterAsync("North");
        await FillAsync(center, "s1", 5, ends: false);
        await FillAsync(center, "s2", 5);
        using var link = center.Link(_chain.Address);
        await center.Sync(link).RunAsync(Cancel);
        var before = await _chain.Chain.EventsAsync("North");
        server.Run(FreshChain.Database, "UPDATE chain.log_steps SET input_json = replace(input_json, 'note', 'other') || ' ' WHERE sequence = 6");
        var answer = await link.DeliverAsync(
            new Delivery(SyncFormat.Messages, SyncFormat.Events, [(await center.Store.AskAsync(record => record.ToDeliverAsync("s1", 0, 100, Cancel), Cancel))!]), Cancel);
        Assert.Contains("nothing was overwritten", Assert.Single(answer.Sessions.AsEnumerable()).Problem, StringComparison.Ordinal);
        Assert.Equal(before.Count, (await _chain.Chain.EventsAsync("North")).Count);
    }

    [Fact]
    public async Task RunAsync_ChainHasMoreThanTheCenter_SaysSo()
    {
        var center = await CenterAsync("North");
        await FillAsync(center, "s1", 5);
        using var link = center.Link(_chain.Address);
        await center.Sync(link).RunAsync(Cancel);
        server.Run(FreshChain.Database, "UPDATE chain.sessions SET last_sequence = 99");
        var state = await center.Sync(link).RunAsync(Cancel);
        Assert.Contains("was an old backup restored here", Assert.Single(state.SetAside.AsEnumerable()), StringComparison.Ordinal);
        Assert.False(state.IsComplete);
    }

    [Fact]
    public async Task RunAsync_StepThatCannotBeRead_TakesThoseBeforeItAndGoesOnWithOthers()
    {
        var center = await CenterAsync("North");
        await FillAsync(center, "s1", 5);
        await FillAsync(center, "s2", 5);
        using var link = center.Link(_chain.Address);
        var counting = new CountingLink(link)
        {
            Spoil = session => session.Id != "s1" ? session : session with
            {
                Steps = session.Steps.Select(step => step.Sequence == 4 ? step with { EventsJson = """[{"kind":"ofTheFuture"}]""" } : step).ToValueList(),
            },
        };
        var state = await center.Sync(counting).RunAsync(Cancel);
        Assert.Contains("step 4 cannot be read here", Assert.Single(state.SetAside.AsEnumerable()), StringComparison.Ordinal);
        var there = await _chain.Chain.EventsAsync("North");
        Assert.Equal(3, there.Count(step => step.Session == "s1"));
        Assert.Equal(7, there.Count(step => step.Session == "s2"));
    }

    [Fact]
    public async Task Deliver_StepsMissingInBetween_AreAskedForAgain()
    {
        var center = await CenterAsync("North");
        await FillAsync(center, "s1", 10);
        using var link = center.Link(_chain.Address);
        var late = (await center.Store.AskAsync(record => record.ToDeliverAsync("s1", 4, 100, Cancel), Cancel))!;
        var first = Assert.Single((await link.DeliverAsync(new Delivery(SyncFormat.Messages, SyncFormat.Events, [late]), Cancel)).Sessions.AsEnumerable());
        Assert.Equal((0L, null), (first.Sequence, first.Problem));
        Assert.True((await center.Sync(link).RunAsync(Cancel)).IsComplete);
        await AssertEqualAsync(center);
    }

    [Fact]
    public async Task EraseBowlerAsync_AtTheCenter_GoesHereAndAtTheChainAndNeverComesBack()
    {
        var center = await CenterAsync("North");
        await FillAsync(center, "s1", 10, bowler: "Ann Lee");
        await FillAsync(center, "s2", 10, bowler: "Bo");
        using var link = center.Link(_chain.Address);
        await center.Sync(link).RunAsync(Cancel);
        var late = (await center.Store.AskAsync(record => record.ToDeliverAsync("s1", 0, 100, Cancel), Cancel))!;

        Assert.Equal(["s1"], (await center.Erasing.EraseBowlerAsync("ANN lee", Cancel)).Erased!.Sessions);
        Assert.Null(await center.Store.FindBowlerAsync("Ann Lee", Cancel));
        Assert.NotNull(await center.Store.FindBowlerAsync("Bo", Cancel));
        Assert.Equal(1, (await center.Sync(new DeadLink()).RunAsync(Cancel)).ErasuresWaiting);

        // What is to be told survives the host.
        center.Restart();
        Assert.Equal(1, (await center.Sync(new DeadLink()).RunAsync(Cancel)).ErasuresWaiting);
        var counting = new CountingLink(link);
        Assert.True((await center.Sync(counting).RunAsync(Cancel)).IsComplete);
        Assert.NotNull(Assert.Single(center.Erasing.Noted()).ChainToldAt);
        center.Restart();
        Assert.True((await center.Sync(counting).RunAsync(Cancel)).IsComplete);
        Assert.Equal(1, counting.Erasures);
        Assert.Equal(0, await _chain.Chain.AskAsync(tables => tables.Bowlers.CountAsync(bowler => bowler.Key == "ANN LEE"), Cancel));
        await AssertEqualAsync(center);

        // What was on the way when it was erased comes too late.
        var answer = Assert.Single((await link.DeliverAsync(new Delivery(SyncFormat.Messages, SyncFormat.Events, [late]), Cancel)).Sessions.AsEnumerable());
        Assert.True(answer.Erased);
        await AssertEqualAsync(center);
        foreach (var table in (string[])["log_steps", "crossings", "blocks", "sums"])
        {
            Assert.Equal(0, server.Ask<long>(FreshChain.Database, $"SELECT count(*) FROM chain.{table} WHERE session_key NOT IN (SELECT key FROM chain.sessions)"));
        }
    }

    [Fact]
    public async Task EraseBowlerAsync_AtACenterThatSends_LeavesNoByteOfTheNameInItsFolder()
    {
        var center = await CenterAsync("North");
        await FillAsync(center, "s1", 10, bowler: "Zyxwvut Rememberme");
        await FillAsync(center, "s2", 10, bowler: "Bo");
        using var link = center.Link(_chain.Address);
        await center.Sync(link).RunAsync(Cancel);

        // With words of the chain about a session of hers in the state that is kept beside the record.
        server.Run(FreshChain.Database, "UPDATE chain.sessions SET last_sequence = 99 WHERE id = 's1'");
        Assert.NotEmpty((await center.Sync(link).RunAsync(Cancel)).SetAside);
        await center.Erasing.EraseBowlerAsync("Zyxwvut Rememberme", Cancel);
        AssertForgotten(center);
        Assert.True((await center.Sync(link).RunAsync(Cancel)).IsComplete);
        AssertForgotten(center);
        Assert.Equal(0, await _chain.Chain.AskAsync(tables => tables.Bowlers.CountAsync(bowler => bowler.Name != "Bo"), Cancel));
    }

    [Fact]
    public async Task EraseBowlerAsync_SessionUnderWay_IsRefused()
    {
        var center = await CenterAsync("North");
        await FillAsync(center, "s1", 3, ends: false);
        Assert.Contains("is open on lane 7: end it first", (await center.Erasing.EraseBowlerAsync("Ann Lee", Cancel)).Why, StringComparison.Ordinal);
        Assert.Empty(center.Erasing.Noted());
    }

    [Fact]
    public async Task RunAsync_ListOfErasuresCannotBeRead_SendsNothingAndNamesTheLine()
    {
        var center = await CenterAsync("North");
        await FillAsync(center, "s1", 3);
        await File.WriteAllTextAsync(center.File("erasures.jsonl"), "{}\n", Cancel);
        using var link = center.Link(_chain.Address);
        var counting = new CountingLink(link);

        var told = await Assert.ThrowsAsync<StoreUnavailableException>(() => center.Sync(counting).RunAsync(Cancel));

        Assert.Contains("erasures.jsonl:1: ", told.Message, StringComparison.Ordinal);
        Assert.Equal((0, 0), (counting.Steps, counting.Erasures));
    }

    [Fact]
    public async Task RunAsync_CopyWithAnErasedPersonWasPutBack_IsErasedAgainBeforeAnythingIsSent()
    {
        var center = await CenterAsync("North");
        await FillAsync(center, "s1", 3);
        using var link = center.Link(_chain.Address);
        var counting = new CountingLink(link);
        await center.Erasing.EraseBowlerAsync("Ann Lee", Cancel);
        await FillAsync(center, "s1", 3, ends: false);

        Assert.True((await center.Sync(counting).RunAsync(Cancel)).IsComplete);

        Assert.Equal((0, 1), (counting.Steps, counting.Erasures));
        Assert.Empty(await center.EventsAsync());
    }

    [Fact]
    public async Task EraseBowlerAsync_AtTheChain_IsCarriedToEveryCenterOfThePerson()
    {
        var (north, south) = (await CenterAsync("North"), await CenterAsync("South"));
        await FillAsync(north, "s1", 10);
        await FillAsync(south, "s1", 10, bowler: "A. Lee");
        await FillAsync(south, "s2", 10, bowler: "Bo");
        using var northLink = north.Link(_chain.Address);
        using var southLink = south.Link(_chain.Address);
        await north.Sync(northLink).RunAsync(Cancel);
        await south.Sync(southLink).RunAsync(Cancel);
        Assert.True(await _chain.Chain.LinkAsync("Ann", "North", "ann lee", Cancel));
        Assert.True(await _chain.Chain.LinkAsync("Ann", "South", "a. lee", Cancel));

        Assert.Equal(2, await _chain.Chain.EraseBowlerAsync(null, "Ann", Cancel));
        Assert.Equal([1, 1], (await _chain.Chain.ListCentersAsync(Cancel)).Select(center => center.ErasuresWaiting));
        Assert.True((await north.Sync(northLink).RunAsync(Cancel)).IsComplete);
        Assert.True((await south.Sync(southLink).RunAsync(Cancel)).IsComplete);
        Assert.Equal([0, 0], (await _chain.Chain.ListCentersAsync(Cancel)).Select(center => center.ErasuresWaiting));
        Assert.Empty(await north.EventsAsync());
        Assert.Null(await south.Store.FindBowlerAsync("A. Lee", Cancel));
        await AssertEqualAsync(south);
        Assert.Equal(0, await _chain.Chain.AskAsync(tables => tables.People.CountAsync(), Cancel));
    }

    [Fact]
    public async Task Months_SessionsOfManyTimes_LieInTheirParts()
    {
        var center = await CenterAsync("North");
        foreach (var (id, at) in ((string, DateTimeOffset)[])
            [
                ("s1", new(2026, 3, 31, 23, 59, 59, TimeSpan.Zero)), ("s2", new(2026, 4, 1, 1, 0, 0, TimeSpan.FromHours(2))),
                ("s3", new(2026, 4, 1, 0, 0, 0, TimeSpan.Zero)), ("s4", new(1971, 1, 1, 0, 0, 0, TimeSpan.Zero)),
            ])
        {
            await center.BeginAsync(id, "Ann Lee", at: at);
            await center.EndAsync(id);
        }

        using var link = center.Link(_chain.Address);
        Assert.True((await center.Sync(link).RunAsync(Cancel)).IsComplete);
        await AssertEqualAsync(center);
        Assert.Equal((4L, 2L, 2L), (
            server.Ask<long>(FreshChain.Database, "SELECT count(*) FROM chain.log_steps_2026_03"), server.Ask<long>(FreshChain.Database, "SELECT count(*) FROM chain.log_steps_2026_04"),
            server.Ask<long>(FreshChain.Database, "SELECT count(*) FROM chain.log_steps_other")));
    }

    [Fact]
    public void Model_AsWritten_IsThatOfTheMigrations()
    {
        using var context = PostgresDatabase.ChainOver(server.Connect(FreshChain.Database), owns: true);
        Assert.False(context.Database.HasPendingModelChanges(), "run dotnet-ef migrations add, see docs/chain.md");
        Assert.Equal(context.Database.GetMigrations(), PostgresSchema.Known<ChainContext>());
    }

    private async Task<TestCenter> CenterAsync(string name)
    {
        var center = new TestCenter(name, (await _chain.Chain.AddCenterAsync(name, Cancel))!);
        _centers.Add(center);
        return center;
    }

    private static async Task FillAsync(TestCenter center, string id, int steps, string bowler = "Ann Lee", bool ends = true)
    {
        var chance = new Chance((ulong)steps);
        await center.BeginAsync(id, bowler);
        for (var i = 0; i < steps; i++)
        {
            await center.StepAsync(id, chance);
        }

        if (ends)
        {
            await center.EndAsync(id);
        }
    }

    private async Task AssertEqualAsync(TestCenter center) => Assert.Equal(await center.EventsAsync(), await _chain.Chain.EventsAsync(center.Name));

    private static void AssertForgotten(TestCenter center)
    {
        var files = Directory.GetFiles(center.Folder, "*", SearchOption.AllDirectories).Where(file => !file.EndsWith(".lock", StringComparison.Ordinal)).ToList();
        Assert.Superset(new HashSet<string>(["aimtrainer.db", "erasures.jsonl", "sync-state.json"]), files.Select(file => Path.GetFileName(file)).ToHashSet());
        foreach (var file in files)
        {
            using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            using var reader = new StreamReader(stream, System.Text.Encoding.Latin1);
            Assert.DoesNotContain("Rememberme", reader.ReadToEnd(), StringComparison.OrdinalIgnoreCase);
        }
    }
}
