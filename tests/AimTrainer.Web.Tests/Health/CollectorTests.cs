using System.Collections.Concurrent;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using OpenTelemetry.Metrics;
using OpenTelemetry.Trace;

namespace AimTrainer.Web.Tests;

/// <summary>Metrics and traces reach a collector of the user's own, and hold neither names nor tokens. None are sent unless it is asked for.</summary>
public sealed class CollectorTests
{
    [Fact]
    public async Task Collector_Named_GetsMetricsAndTheTraceOfAShotFromDoorToDisk()
    {
        await using var collector = await FakeCollector.StartAsync();
        await using var host = await TestHost.StartAsync(lines: true, adjustOptions: options => options with { Telemetry = collector.Address });
        await host.StartSessionAsync();
        using var reader = await EventReader.OpenAsync(host.Client, "/api/stations/1/live");
        await reader.NextAsync();
        await host.ShotAsync("a-shot");
        await reader.NextAsync();
        await host.Client.GetAsync("/api/bowlers/Ann", TestContext.Current.CancellationToken);

        Assert.True(host.Services.GetRequiredService<MeterProvider>().ForceFlush());
        Assert.True(host.Services.GetRequiredService<TracerProvider>().ForceFlush());

        // A request's own trace ends a moment after its answer has come: it may take another turn.
        for (var turn = 0; turn < 200 && !collector.Text("/v1/traces").Contains("/shots", StringComparison.Ordinal); turn++)
        {
            await host.GetAsync("/api/projection");
            host.Services.GetRequiredService<TracerProvider>().ForceFlush();
        }

        var metrics = collector.Text("/v1/metrics");
        foreach (var name in (string[])["aimtrainer.shots", "aimtrainer.shot.acknowledge", "aimtrainer.feed.state", "aimtrainer.event.delivery", "aimtrainer.displays.connected", "accepted"])
        {
            Assert.Contains(name, metrics, StringComparison.Ordinal);
        }

        var traces = collector.Text("/v1/traces");
        Assert.Contains("/api/stations/{station:int}/shots", traces, StringComparison.Ordinal);
        Assert.Contains("keep", traces, StringComparison.Ordinal);
        Assert.DoesNotContain("Ann", metrics + traces, StringComparison.Ordinal);
        Assert.DoesNotContain("a-shot", metrics + traces, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Collector_NotNamed_NothingIsMadeToSend()
    {
        await using var host = await TestHost.StartAsync();

        Assert.Null(host.Services.GetService<MeterProvider>());
        Assert.Null(host.Services.GetService<TracerProvider>());
    }

    /// <summary>Takes what is sent. Source: OTLP specification 1.5, "OTLP/HTTP": POST to /v1/metrics and /v1/traces, 200 when taken.</summary>
    private sealed class FakeCollector : IAsyncDisposable
    {
        private readonly ConcurrentQueue<(string Path, byte[] Body)> _got = new();
        private readonly WebApplication _app;

        private FakeCollector()
        {
            var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
            builder.WebHost.UseKestrelCore();
            _app = builder.Build();
            _app.Urls.Add("http://127.0.0.1:0");
            _app.Run(async context =>
            {
                using var body = new MemoryStream();
                await context.Request.Body.CopyToAsync(body);
                _got.Enqueue((context.Request.Path.Value!, body.ToArray()));
                context.Response.ContentType = "application/x-protobuf";
            });
        }

        public Uri Address => new(_app.Urls.First());

        public static async Task<FakeCollector> StartAsync()
        {
            var collector = new FakeCollector();
            await collector._app.StartAsync(TestContext.Current.CancellationToken);
            return collector;
        }

        /// <summary>Names stand in a message as they are.</summary>
        public string Text(string path) => string.Join('\n', _got.Where(one => one.Path == path).Select(one => Encoding.UTF8.GetString(one.Body)));

        public async ValueTask DisposeAsync() => await _app.DisposeAsync();
    }
}
