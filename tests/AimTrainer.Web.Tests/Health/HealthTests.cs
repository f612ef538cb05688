using System.Net;
using AimTrainer.Sessions;
using Microsoft.Extensions.DependencyInjection;

namespace AimTrainer.Web.Tests;

public sealed class HealthTests : IAsyncLifetime
{
    private TestHost _host = null!;

    public async ValueTask InitializeAsync() => _host = await TestHost.StartAsync(4);

    public ValueTask DisposeAsync() => _host.DisposeAsync();

    [Fact]
    public async Task Live_AsLongAsItAnswers_IsAlive() =>
        Assert.Equal("alive\n", await _host.Client.GetStringAsync("/health/live", TestContext.Current.CancellationToken));

    [Fact]
    public async Task Ready_AllIsWell_TellsEachThing()
    {
        await _host.StartSessionAsync();

        var ready = await _host.GetAsync("/health/ready");

        Assert.True(ready.GetProperty("ready").GetBoolean(), ready.GetRawText());
        Assert.Equal(["data folder", "disk", "store", "stations"], ready.GetProperty("checks").EnumerateArray().Select(check => check.GetProperty("name").GetString()));
        Assert.Empty(Directory.EnumerateFiles(_host.Folder, "ready.*"));

        // It was asked through the stations' own door, and changed nothing there.
        Assert.Equal(1, _host.Services.GetRequiredService<IReadOnlyList<Station>>()[0].Snapshot.Version);
    }

    [Fact]
    public async Task Ready_FolderGone_Is503AndSaysWhat()
    {
        var settings = new ConsoleSettings { DataFolder = Path.Combine(_host.Folder, "gone") };
        using var readiness = Of(settings, _host.Services.GetRequiredService<ISessionStore>(), _ => 1L << 40);

        var found = await readiness.LookAsync(TestContext.Current.CancellationToken);

        Assert.False(found.Ready);
        Assert.Equal(["data folder"], found.Checks.AsEnumerable().Where(check => !check.Ok).Select(check => check.Name));
    }

    [Fact]
    public async Task Ready_DiskNearlyFull_IsNotReady()
    {
        using var readiness = Of(new ConsoleSettings { DataFolder = _host.Folder }, _host.Services.GetRequiredService<ISessionStore>(), _ => 100L << 20);

        var found = await readiness.LookAsync(TestContext.Current.CancellationToken);

        Assert.Equal("100 MiB are free; at least 256 MiB should be: make room before shots can no longer be kept", Assert.Single(found.Checks.AsEnumerable(), check => !check.Ok).Found);
    }

    [Fact]
    public async Task Ready_StationsStopped_AreNamed()
    {
        // These were made and never run; nothing takes what comes to their doors, as when they hang.
        var clock = new Microsoft.Extensions.Time.Testing.FakeTimeProvider();
        var store = _host.Services.GetRequiredService<ISessionStore>();
        Station[] stations = [new Station(1, store, clock), new Station(2, store, clock)];
        using var readiness = new Readiness(new ConsoleSettings { DataFolder = _host.Folder }, stations, store, clock);

        var looking = readiness.LookAsync(TestContext.Current.CancellationToken);
        while (!looking.IsCompleted)
        {
            clock.Advance(TimeSpan.FromSeconds(1));
            await Task.Yield();
        }

        Assert.StartsWith("no answer of 1, 2", Assert.Single((await looking).Checks.AsEnumerable(), check => !check.Ok).Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ready_ForWhoeverIsNotTheCoach_SaysOnlyWhether()
    {
        await using var host = await TestHost.StartAsync(passphrase: true);

        Assert.Equal(HttpStatusCode.OK, (await host.Client.GetAsync("/health/live", TestContext.Current.CancellationToken)).StatusCode);
        var ready = await host.GetAsync("/health/ready");
        Assert.True(ready.GetProperty("ready").GetBoolean());
        Assert.Equal(0, ready.GetProperty("checks").GetArrayLength());
        Assert.DoesNotContain(host.Folder, ready.GetRawText(), StringComparison.Ordinal);
    }

    private Readiness Of(ConsoleSettings settings, ISessionStore store, Func<string, long> free) =>
        new(settings, _host.Services.GetRequiredService<IReadOnlyList<Station>>(), store, TimeProvider.System) { FreeBytes = free };
}
