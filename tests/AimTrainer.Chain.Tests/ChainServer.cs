using AimTrainer.Store.Postgres;
using AimTrainer.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace AimTrainer.Chain.Tests;

/// <summary>A chain's host in this process, on a port of its own.</summary>
internal sealed class ChainServer : IAsyncDisposable
{
    private readonly WebApplication _app;

    private ChainServer(PostgresChain chain, WebApplication app) => (Chain, _app) = (chain, app);

    public PostgresChain Chain { get; }

    public Uri Address => new(_app.Urls.First());

    public static async Task<ChainServer> OpenAsync(PostgresPlace place, TimeProvider? clock = null)
    {
        var chain = PostgresChain.Open(place, clock ?? TimeProvider.System);
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder.WebHost.UseKestrelCore();
        builder.Services.AddRouting();
        builder.Services.Configure<HostOptions>(options => options.ShutdownTimeout = TimeSpan.Zero);
        var app = builder.Build();
        app.Urls.Add("http://127.0.0.1:0");
        app.MapChain(chain);
        await app.StartAsync();
        return new ChainServer(chain, app);
    }

    /// <summary>Ends at once, whatever is under way.</summary>
    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync(new CancellationToken(true));
        await _app.DisposeAsync();
        Chain.Dispose();
    }
}
