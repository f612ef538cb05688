using AimTrainer.Domain;
using AimTrainer.Store;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace AimTrainer.Web.Tests;

/// <summary>How the sending to the chain stands, on the settings page and in the health answer.</summary>
public sealed class ChainStandingTests
{
    [Fact]
    public async Task Settings_NoChain_SayNothingOfOne()
    {
        await using var host = await TestHost.StartAsync();

        Assert.DoesNotContain("Sending to the chain", await host.Client.GetStringAsync("/settings", Cancel), StringComparison.Ordinal);
        var ready = await host.GetAsync("/health/ready");
        Assert.False(ready.GetProperty("degraded").GetBoolean());
        Assert.DoesNotContain("chain", ready.GetRawText(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ready_ChainRefuses_IsDegradedAndReadyAndThePageSaysWhy()
    {
        var link = new ToldLink { Why = "token: found none that is known here <b>" };
        await using var host = await HostAsync(link);
        await host.StartSessionAsync();
        await UntilAsync(host, state => state.Error is not null);

        var ready = await host.GetAsync("/health/ready");
        Assert.True(ready.GetProperty("ready").GetBoolean() && ready.GetProperty("degraded").GetBoolean(), ready.GetRawText());
        var check = Assert.Single(ready.GetProperty("checks").EnumerateArray(), check => check.GetProperty("name").GetString() == "chain");
        Assert.False(check.GetProperty("ok").GetBoolean());
        Assert.Contains("never reached, how many steps wait is not known; token: found none", check.GetProperty("found").GetString(), StringComparison.Ordinal);

        var page = await host.Client.GetStringAsync("/settings", Cancel);
        Assert.Contains("token: found none that is known here &lt;b&gt;", page, StringComparison.Ordinal);
        Assert.Contains("not known before the chain is reached again", page, StringComparison.Ordinal);
        Assert.Matches("<dt>Last success</dt>\\s*<dd>\\s*never", page);
    }

    [Fact]
    public async Task Ready_ChainReachedAgain_IsWellAndTellsWhen()
    {
        var link = new ToldLink { Why = "away" };
        await using var host = await HostAsync(link);
        await host.StartSessionAsync();
        await UntilAsync(host, state => state.Error is not null);
        link.Why = null;
        await UntilAsync(host, state => state is { Error: null, WaitingSteps: 0 });

        var check = Assert.Single((await host.GetAsync("/health/ready")).GetProperty("checks").EnumerateArray(), check => check.GetProperty("name").GetString() == "chain");
        Assert.True(check.GetProperty("ok").GetBoolean(), check.GetRawText());
        Assert.Contains(" 0 steps wait", check.GetProperty("found").GetString(), StringComparison.Ordinal);
        var page = await host.Client.GetStringAsync("/settings", Cancel);
        Assert.Contains("which calls this center Told Lanes", page, StringComparison.Ordinal);
        Assert.Matches("<dt>Last success</dt>\\s*<dd>\\s*<time", page);
        Assert.Matches("<dt>Waiting</dt>\\s*<dd>\\s*nothing", page);

        // When it was last reached outlives the host; what waits is asked anew.
        link.Why = "away";
        await host.RestartAsync();
        await UntilAsync(host, state => state.Error is not null);
        page = await host.Client.GetStringAsync("/settings", Cancel);
        Assert.Matches("<dt>Last success</dt>\\s*<dd>\\s*<time", page);
        Assert.Contains("not known before the chain is reached again", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ready_SessionThatIsNotTaken_IsNamedWithTheReason()
    {
        var link = new ToldLink { Problem = "step 1 is another one at the chain" };
        await using var host = await HostAsync(link);
        await host.StartSessionAsync();
        await UntilAsync(host, state => state.SetAside.Count > 0);

        var check = Assert.Single((await host.GetAsync("/health/ready")).GetProperty("checks").EnumerateArray(), check => check.GetProperty("name").GetString() == "chain");
        Assert.Contains("1 sessions are not taken", check.GetProperty("found").GetString(), StringComparison.Ordinal);
        var page = await host.Client.GetStringAsync("/settings", Cancel);
        Assert.Contains("The chain does not take 1 session.", page, StringComparison.Ordinal);
        Assert.Contains("step 1 is another one at the chain", page, StringComparison.Ordinal);
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>A host whose sender waits on the test's clock.</summary>
    private static Task<TestHost> HostAsync(ToldLink link) =>
        TestHost.StartAsync(clock: new FakeTimeProvider(DateTimeOffset.UtcNow), adjustOptions: options => options with { Chain = link });

    /// <summary>Lets time pass until the host's sender has come so far.</summary>
    private static async Task UntilAsync(TestHost host, Func<SyncState, bool> far)
    {
        var sync = host.Services.GetRequiredService<CenterSync>();
        var clock = (FakeTimeProvider)host.Services.GetRequiredService<TimeProvider>();
        while (!far(sync.State))
        {
            clock.Advance(TimeSpan.FromSeconds(5));
            await Task.Delay(TimeSpan.FromMilliseconds(10), Cancel);
        }

        // What was looked at a moment ago holds no longer.
        clock.Advance(TimeSpan.FromSeconds(1.5));
    }

    /// <summary>A chain that answers as it was told.</summary>
    private sealed class ToldLink : IChainLink
    {
        public string? Why { get; set; }

        public string? Problem { get; init; }

        public string Name => "https://chain.example";

        public Task<HaveAnswer> HaveAsync(HaveRequest request, CancellationToken cancellationToken) =>
            Why is { } why ? throw new ChainRefusedException(why) : Task.FromResult(new HaveAnswer(SyncFormat.Messages, SyncFormat.Events, "Told Lanes", [], []));

        public Task<DeliveryAnswer> DeliverAsync(Delivery delivery, CancellationToken cancellationToken) => Task.FromResult(new DeliveryAnswer(
            delivery.Sessions.Select(session => new DeliveredAnswer(session.Id, Problem is null ? session.Steps[^1].Sequence : 0, false, Problem)).ToValueList()));

        public Task<ErasureAnswer> EraseAsync(ErasureRequest request, CancellationToken cancellationToken) => Task.FromResult(new ErasureAnswer(0));

        public Task<GroupsAnswer?> TellGroupsAsync(GroupsRequest request, CancellationToken cancellationToken) => Task.FromResult<GroupsAnswer?>(null);
    }
}
