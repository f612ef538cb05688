namespace AimTrainer.Web.Tests;

public sealed class EventStreamTests
{
    [Fact]
    public async Task Log_CutAndTakenUpAgainAcrossARestart_EveryStepOnce()
    {
        await using var host = await TestHost.StartAsync();
        var session = await host.StartSessionAsync();
        var seen = new List<long>();

        // Cut after each few events, while shots go on; the host is stopped and started in between.
        for (var round = 0; round < 4; round++)
        {
            await host.ShotAsync($"shot-{round}-1", 9 + round);
            using var reader = await EventReader.OpenAsync(host.Client, $"/api/sessions/{session}/events", seen.Count == 0 ? null : seen[^1]);
            seen.Add((await reader.NextAsync())!.Value.Id);
            await host.ShotAsync($"shot-{round}-2", 9.5 + round);
            seen.Add((await reader.NextAsync())!.Value.Id);
            if (round == 2)
            {
                await host.RestartAsync();
            }
        }

        using var last = await EventReader.OpenAsync(host.Client, $"/api/sessions/{session}/events", seen[^1]);
        var steps = (await host.GetAsync("/api/stations/1")).GetProperty("version").GetInt64();
        while (seen[^1] < steps)
        {
            seen.Add((await last.NextAsync())!.Value.Id);
        }

        // One step for the begin, one for each shot.
        Assert.Equal(Enumerable.Range(1, 9).Select(number => (long)number), seen);
    }

    [Fact]
    public async Task Log_HostIsStopped_StreamEndsAtOnce()
    {
        await using var host = await TestHost.StartAsync();
        var session = await host.StartSessionAsync();
        using var reader = await EventReader.OpenAsync(host.Client, $"/api/sessions/{session}/events");
        await reader.NextAsync();

        await host.RestartAsync();

        Assert.Null(await reader.NextAsync());
    }

    [Fact]
    public async Task Live_NewPicture_ComesToEveryReader()
    {
        await using var host = await TestHost.StartAsync();
        await host.StartSessionAsync();
        using var one = await EventReader.OpenAsync(host.Client, "/api/stations/1/live");
        using var all = await EventReader.OpenAsync(host.Client, "/api/stations/all/live");
        Assert.Equal(1, (await one.NextAsync())!.Value.Data.GetProperty("nextNumber").GetInt32());
        Assert.Equal(2, (await all.NextAsync())!.Value.Data.GetArrayLength());

        await host.ShotAsync("a");

        Assert.Equal(2, (await one.NextAsync())!.Value.Data.GetProperty("nextNumber").GetInt32());
        var changed = (await all.NextAsync())!.Value.Data;
        Assert.Equal((1, 2), (changed.GetArrayLength(), changed[0].GetProperty("nextNumber").GetInt32()));
    }
}
