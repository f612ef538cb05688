using AimTrainer.Output;
using AimTrainer.Store.Postgres;
using AimTrainer.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Hosting;

namespace AimTrainer.Setup;

/// <summary>Takes what the centers of a chain send.</summary>
internal sealed class ChainHost : IAsyncDisposable
{
    /// <summary>This machine only.</summary>
    public const string UsualUrl = "http://127.0.0.1:5272";

    private readonly WebApplication _app;

    private ChainHost(WebApplication app) => _app = app;

    /// <summary>Where it listens.</summary>
    public IEnumerable<string> Addresses => _app.Urls;

    /// <summary>Opens it.</summary>
    /// <exception cref="UserException">An address cannot be had.</exception>
    public static async Task<ChainHost> OpenAsync(PostgresChain chain, string urls, CancellationToken cancellationToken)
    {
        var app = ConsoleHost.Bare().Build();
        foreach (var url in Binding.Split(urls))
        {
            app.Urls.Add(url);
        }

        app.MapChain(chain);
        try
        {
            await app.StartAsync(cancellationToken).ConfigureAwait(false);
            return new ChainHost(app);
        }
        catch (Exception exception) when (exception is IOException or FormatException or InvalidOperationException)
        {
            await app.DisposeAsync().ConfigureAwait(false);
            throw new UserException($"--urls {urls}: {exception.Message.TrimEnd('.')}: name another address, such as {UsualUrl}", ExitCodes.Failed);
        }
    }

    public Task UntilStoppedAsync(CancellationToken cancellationToken) => _app.WaitForShutdownAsync(cancellationToken);

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync().ConfigureAwait(false);
        await _app.DisposeAsync().ConfigureAwait(false);
    }
}
