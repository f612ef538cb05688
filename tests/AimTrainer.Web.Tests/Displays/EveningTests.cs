using System.Collections.Concurrent;
using System.Net;
using AimTrainer.Sessions;
using Microsoft.Extensions.DependencyInjection;

namespace AimTrainer.Web.Tests;

/// <summary>
/// A short evening (the long one is the benchmark <c>evening</c>): bowlers take turns on lanes, each lane has a display elsewhere, all
/// lanes throw at once. No shot may be lost, none may go to the wrong bowler, every display ends at the last one.
/// </summary>
public sealed class EveningTests
{
    private const int Lanes = 6, BowlersALane = 3, ShotsATurn = 8;

    [Fact]
    public async Task Evening_LanesBowlersAndDisplays_NoShotLostNoneToTheWrongBowler()
    {
        await using var host = await TestHost.StartAsync(Lanes);
        var displays = Enumerable.Range(1, Lanes).Select(lane => new LookingDisplay(host.Address, lane, ScreenKind.Overhead, null)).ToList();
        var accepted = new ConcurrentDictionary<string, string>();
        await Task.WhenAll(Enumerable.Range(1, Lanes).Select(async lane =>
        {
            for (var turn = 0; turn < BowlersALane; turn++)
            {
                var bowler = $"Invented {lane}-{turn}";
                await OkAsync(HttpStatusCode.Created, host, $"/api/stations/{lane}/sessions", $$"""{"bowler":"{{bowler}}","drill":"three-rings","hand":"right"}""");
                await OkAsync(HttpStatusCode.OK, host, $"/api/stations/{lane}/actions", """{"kind":"begin"}""");
                for (var shot = 0; shot < ShotsATurn; shot++)
                {
                    var id = $"{lane}-{turn}-{shot}";

                    // The next bowler's shot comes too early now and then, and each is sent twice: neither may count.
                    if (shot == 3)
                    {
                        await OkAsync(HttpStatusCode.Conflict, host, $"/api/stations/{lane}/shots", $$"""{"id":"{{id}}-early","bowler":"Invented {{lane}}-{{turn + 1}}","arrowsBoard":10}""");
                    }

                    for (var again = 0; again < 2; again++)
                    {
                        await OkAsync(HttpStatusCode.OK, host, $"/api/stations/{lane}/shots", $$"""{"id":"{{id}}","bowler":"{{bowler}}","arrowsBoard":{{9 + (shot % 4)}}.5}""");
                    }

                    Assert.True(accepted.TryAdd(id, bowler));
                }

                await displays[lane - 1].UntilAsync(one => one.Slot.Newest.Snapshot is { NextNumber: ShotsATurn + 1, Setup: { } setup } && setup.Bowler == bowler);
                await OkAsync(HttpStatusCode.OK, host, $"/api/stations/{lane}/actions", """{"kind":"end","why":"next bowler"}""");
            }
        }));

        foreach (var display in displays)
        {
            await display.DisposeAsync();
        }

        Assert.Equal(accepted.OrderBy(one => one.Key, StringComparer.Ordinal), (await KeptAsync(host)).OrderBy(one => one.Key, StringComparer.Ordinal));
    }

    /// <summary>Each kept shot with the bowler of its session.</summary>
    private static async Task<Dictionary<string, string>> KeptAsync(TestHost host)
    {
        var store = host.Services.GetRequiredService<ISessionStore>();
        var kept = new Dictionary<string, string>();
        foreach (var session in await store.ListAsync(new SessionFilter { Limit = 1000 }, TestContext.Current.CancellationToken))
        {
            await foreach (var entry in store.ReadLogAsync(session.SessionId, 0, TestContext.Current.CancellationToken))
            {
                if (entry.Input is Domain.SessionInput.ShotThrown thrown)
                {
                    kept.Add(thrown.Shot.Id!, session.Bowler);
                }
            }
        }

        return kept;
    }

    private static async Task OkAsync(HttpStatusCode wanted, TestHost host, string path, string json)
    {
        using var answer = await host.Client.PostAsync(path, TestHost.Json(json), TestContext.Current.CancellationToken);
        Assert.True(wanted == answer.StatusCode, $"{path} {json}: {(int)answer.StatusCode} {await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)}");
    }
}
