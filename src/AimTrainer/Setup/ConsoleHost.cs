using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Store.Sqlite;
using AimTrainer.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace AimTrainer.Setup;

/// <summary>Stations, record, console and API in one host.</summary>
internal sealed class ConsoleHost : IAsyncDisposable
{
    /// <summary>This machine only.</summary>
    public const string UsualUrl = "http://127.0.0.1:5271";

    private readonly DataFolder _folder;
    private readonly SqliteSessionStore _store;
    private readonly WebApplication _app;

    private ConsoleHost(DataFolder folder, SqliteSessionStore store, WebApplication app) => (_folder, _store, _app) = (folder, store, app);

    /// <summary>Where it listens.</summary>
    public IEnumerable<string> Addresses => _app.Urls;

    /// <summary>The file that holds the record.</summary>
    public string RecordFile => _folder.DatabaseFile;

    /// <param name="dataFolder">Where the record is; null is the usual place.</param>
    /// <param name="stations">How many stations.</param>
    /// <param name="urls">Where to listen, separated by semicolons.</param>
    /// <param name="cancellationToken">Ends the start.</param>
    /// <exception cref="UserException">An address cannot be had.</exception>
    public static async Task<ConsoleHost> OpenAsync(string? dataFolder, int stations, string urls, CancellationToken cancellationToken)
    {
        var folder = DataFolder.Open(dataFolder);
        SqliteSessionStore? store = null;
        try
        {
            store = SqliteSessionStore.Open(folder);
            var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
            builder.WebHost.UseKestrelCore();
            builder.Services.AddRouting();
            builder.Logging.AddSimpleConsole(options => options.SingleLine = true).SetMinimumLevel(LogLevel.Warning);
            builder.Services.AddSingleton<ISessionStore>(store);
            builder.Services.AddStations(stations);
            builder.Services.AddConsole(new ConsoleSettings { DataFolder = Path.GetDirectoryName(folder.DatabaseFile)! });
            var app = builder.Build();
            foreach (var url in urls.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            {
                app.Urls.Add(url);
            }

            app.MapConsole();
            await app.StartAsync(cancellationToken).ConfigureAwait(false);
            return new ConsoleHost(folder, store, app);
        }
        catch (Exception exception)
        {
            store?.Dispose();
            folder.Dispose();
            throw exception is IOException or FormatException or InvalidOperationException
                ? new UserException($"--urls {urls}: {exception.Message.TrimEnd('.')}: name another address, such as {UsualUrl}", ExitCodes.Failed)
                : exception;
        }
    }

    public Task UntilStoppedAsync(CancellationToken cancellationToken) => _app.WaitForShutdownAsync(cancellationToken);

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync().ConfigureAwait(false);
        await _app.DisposeAsync().ConfigureAwait(false);
        _store.Dispose();
        _folder.Dispose();
    }
}
