using AimTrainer.Domain;
using AimTrainer.Sessions;
using AimTrainer.Store;
using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Chain.Tests;

/// <summary>What a chain hears of its centers' groups, and when.</summary>
[Collection(PostgresCollection.Name)]
public sealed class GroupSyncTests(PostgresServer server) : IAsyncLifetime
{
    private ChainServer _chain = null!;
    private TestCenter _center = null!;
    private GroupRegister _groups = null!;
    private string _programs = null!;

    public async ValueTask InitializeAsync()
    {
        _chain = await ChainServer.OpenAsync(FreshChain.Of(server));
        _center = new TestCenter("North", (await _chain.Chain.AddCenterAsync("North", Cancel))!);
        _groups = new GroupRegister(Path.GetDirectoryName(_center.File("x"))!);
        _programs = Directory.CreateDirectory(_center.File("programs")).FullName;
        await File.WriteAllTextAsync(Path.Combine(_programs, "short.json"), """
            {
              "format": 1, "id": "short", "name": "Short", "purpose": "Invented for a test", "whoFor": "Nobody",
              "joining": { "who": "Anybody", "minors": "yes" }, "makeUp": { "withinDays": 0, "most": 0 },
              "levels": [{ "name": "all", "about": "everybody" }],
              "weeks": [{ "name": "one", "sessions": [{ "name": "only", "drills": [{ "drill": "narrowing" }] }] }]
            }
            """);
        await File.WriteAllTextAsync(Path.Combine(_programs, "narrowing.json"), """
            {
              "format": 1, "id": "narrowing", "name": "Narrowing", "purpose": "Invented for a test", "whoFor": "Nobody", "aboutMinutes": 5,
              "blocks": [{ "name": "ten", "kind": "training", "aims": [{ "name": "second arrow", "mark": "arrow 2", "widthBoards": 3 }],
                "order": { "kind": "serial" }, "until": { "shots": 10 }, "feedback": { "when": "summary", "everyShots": 10 } }]
            }
            """);
    }

    public async ValueTask DisposeAsync()
    {
        _center.Dispose();
        await _chain.DisposeAsync();
    }

    [Fact]
    public async Task RunAsync_Groups_AreKnownWithTheirPeopleWhenThoseHaveThrown()
    {
        Save("Ann Lee", "Bo");
        await ThrowAsync("s1", "ann  LEE");
        using var link = _center.Link(_chain.Address);
        var sync = Sync(link);

        Assert.True((await sync.RunAsync(Cancel)).IsComplete);
        Assert.Equal(["ann  LEE"], await EnrolledAsync());
        Assert.Equal(2, await _chain.Chain.AskAsync(tables => tables.Groups.Select(group => group.Members).SingleAsync(Cancel), Cancel));

        // Of somebody without a session the chain keeps no name.
        Assert.Equal(["ann  LEE"], await _chain.Chain.AskAsync(tables => tables.Bowlers.Select(bowler => bowler.Name).ToListAsync(Cancel), Cancel));

        await ThrowAsync("s2", "Bo");
        Assert.True((await sync.RunAsync(Cancel)).IsComplete);
        Assert.Equal(["Bo", "ann  LEE"], await EnrolledAsync());

        _groups.Remove("Ann Lee");
        await sync.RunAsync(Cancel);
        Assert.Equal(["Bo"], await EnrolledAsync());
    }

    [Fact]
    public async Task RunAsync_NothingChanged_TellsOfGroupsOnce()
    {
        Save("Ann Lee", "Bo");
        await ThrowAsync("s1", "Ann Lee");
        using var link = _center.Link(_chain.Address);
        var counting = new CountingLink(link);
        var sync = Sync(counting);
        await sync.RunAsync(Cancel);
        await sync.RunAsync(Cancel);
        Assert.Equal(1, counting.GroupsTold);
    }

    [Fact]
    public async Task RunAsync_BowlerErased_IsInNoGroupOfTheChain()
    {
        Save("Ann Lee");
        await ThrowAsync("s1", "Ann Lee");
        using var link = _center.Link(_chain.Address);
        await Sync(link).RunAsync(Cancel);
        Assert.Single(await EnrolledAsync());

        await _chain.Chain.EraseBowlerAsync("North", "Ann Lee", Cancel);
        Assert.Empty(await EnrolledAsync());

        // Nor when the center, which has not heard of it yet, tells of her again.
        await Sync(link).RunAsync(Cancel);
        Assert.Empty(await EnrolledAsync());
    }

    [Fact]
    public async Task RunAsync_GroupsThatCannotBeRead_AreNoReasonToSendNothing()
    {
        await File.WriteAllTextAsync(_center.File("groups.json"), "{", Cancel);
        await ThrowAsync("s1", "Ann Lee");
        using var link = _center.Link(_chain.Address);
        var state = await Sync(link).RunAsync(Cancel);
        Assert.Equal(0, state.WaitingSteps);
        Assert.Contains("groups.json", state.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TellGroupsAsync_ChainThatAsksForNone_IsNoMistake()
    {
        using var link = _center.Link(new Uri(_chain.Address, "an-older-one"));
        Assert.Null(await link.TellGroupsAsync(new GroupsRequest(SyncFormat.Messages, SyncFormat.Events, [], []), Cancel));
        await Assert.ThrowsAsync<ChainAwayException>(() => link.EraseAsync(new ErasureRequest(SyncFormat.Messages, SyncFormat.Events, []), Cancel));
    }

    private void Save(params string[] members) => _groups.Save(new BowlerGroup
    {
        Id = "class",
        Name = "Tuesday class",
        ProgramId = "short",
        Starts = new DateOnly(2026, 3, 2),
        Members = members.Select(member => new GroupMember(member, Hand.Right, "all", null)).ToValueList(),
    });

    private async Task ThrowAsync(string id, string bowler)
    {
        await _center.BeginAsync(id, bowler);
        await _center.EndAsync(id);
    }

    private CenterSync Sync(IChainLink link) => new(
        _center.Store, link, _center.Files, _center.Erasing, TimeProvider.System, new CenterGroups(_groups, new ProgramShelf(_programs, new DrillShelf(_programs))));

    private async Task<List<string>> EnrolledAsync() => await _chain.Chain.AskAsync(
        tables => (from enrolment in tables.Enrolments join bowler in tables.Bowlers on enrolment.BowlerId equals bowler.Id orderby bowler.Name select bowler.Name).ToListAsync(Cancel), Cancel);
}
