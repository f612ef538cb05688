using AimTrainer.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace AimTrainer.Setup;

/// <summary>The console beside a session that this process runs, for this machine only.</summary>
internal sealed class LiveConsole : IAsyncDisposable
{
    private const string AnyPort = "http://127.0.0.1:0";

    private readonly WebApplication _app;

    private LiveConsole(WebApplication app) => _app = app;

    /// <summary>Where it listens.</summary>
    public string Address => string.Join(" and ", _app.Urls);

    /// <summary>Opens it at the usual address, or at any free port when that is taken.</summary>
    /// <returns>The console; null when no port can be had, and the session goes on without.</returns>
    public static async Task<LiveConsole?> OpenAsync(LiveSession live, CancellationToken cancellationToken)
    {
        foreach (var url in (string[])[ConsoleHost.UsualUrl, AnyPort])
        {
            var app = Build(live, url);
            try
            {
                await app.StartAsync(cancellationToken).ConfigureAwait(false);
                return new LiveConsole(app);
            }
            catch (IOException)
            {
                await app.DisposeAsync().ConfigureAwait(false);
            }
        }

        return null;
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync().ConfigureAwait(false);
        await _app.DisposeAsync().ConfigureAwait(false);
    }

    private static WebApplication Build(LiveSession live, string url)
    {
        var builder = ConsoleHost.Bare();
        builder.Services.AddSingleton(live.Store);
        builder.Services.AddSingleton(live.Practice);
        builder.Services.AddSingleton(live.Erasure);
        builder.Services.AddSingleton(live.Clock);
        builder.Services.AddSingleton(live.Stations);
        builder.Services.AddConsole(new ConsoleSettings
        {
            DataFolder = Path.GetDirectoryName(live.RecordFile)!,
            RecordPlace = live.RecordPlace,
            GoesOnWithOpenSessions = false,
        });
        var app = builder.Build();
        app.Urls.Add(url);
        app.MapConsole();
        return app;
    }
}
