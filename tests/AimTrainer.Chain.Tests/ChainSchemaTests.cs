using AimTrainer.Store;
using AimTrainer.Store.Postgres;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Chain.Tests;

[Collection(PostgresCollection.Name)]
public sealed class ChainSchemaTests(PostgresServer server)
{
    public static TheoryData<string> Earlier() => new(["0", .. PostgresSchema.Known<ChainContext>()]);

    [Theory]
    [MemberData(nameof(Earlier))]
    public async Task Open_ChainOfEachEarlierVersion_IsBroughtUpToDateAndKeepsWhatItHas(string version)
    {
        var database = $"chain_from_{version.Split('_')[0]}";
        var place = server.Place(database);
        using (var context = PostgresDatabase.ChainOver(server.Connect(database), owns: true))
        {
            await context.GetService<IMigrator>().MigrateAsync(version, Cancel);
        }

        if (version != "0")
        {
            // Of the first version: what is there in every one.
            server.Run(database, "INSERT INTO chain.centers (name, token_hash, added_at) VALUES ('Old Lanes', '00', '2026-01-01')");
            server.Run(database, "INSERT INTO chain.bowlers (center_id, name, key) VALUES (1, 'Ann Lee', 'ANN LEE')");
        }

        using var chain = PostgresChain.Open(place, TimeProvider.System);
        using var center = new TestCenter("North", (await chain.AddCenterAsync("North", Cancel))!);
        await center.BeginAsync("s1", "Bo");
        await center.EndAsync("s1");
        var delivered = await center.Store.AskAsync(record => record.ToDeliverAsync("s1", 0, 100, Cancel), Cancel);
        var who = await chain.FindCenterAsync(center.Token, Cancel);
        var answer = await chain.TakeAsync(who!, new(SyncFormat.Messages, SyncFormat.Events, [delivered!]), Cancel);
        Assert.Equal((2L, null), (answer.Sessions[0].Sequence, answer.Sessions[0].Problem));
        Assert.Equal(0, (await chain.TakeGroupsAsync(who!, new GroupsRequest(SyncFormat.Messages, SyncFormat.Events, [], []), Cancel)).Unknown);
        Assert.Equal(version == "0" ? 1 : 2, await chain.AskAsync(tables => tables.Bowlers.CountAsync(Cancel), Cancel));
    }
}
