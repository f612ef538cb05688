using System.Net;
using System.Net.Sockets;
using AimTrainer.Doctor;
using AimTrainer.Feeds;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Store;
using AimTrainer.Store.Sqlite;
using AimTrainer.Web;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Console;

namespace AimTrainer.Setup;

/// <summary>Stations, record, console, API and line feed in one host.</summary>
internal sealed class ConsoleHost : IAsyncDisposable
{
    /// <summary>This machine only.</summary>
    public const string UsualUrl = "http://127.0.0.1:5271";

    /// <summary>The part of the framework that listens: what it says is of an address.</summary>
    private const string Server = "Microsoft.AspNetCore.Server.Kestrel.Core";

    private readonly DataFolder _folder;
    private readonly IRecordStore _store;
    private readonly WebApplication _app;

    private ConsoleHost(DataFolder folder, IRecordStore store, WebApplication app) => (_folder, _store, _app) = (folder, store, app);

    /// <summary>Where it listens.</summary>
    public IEnumerable<string> Addresses => _app.Urls;

    /// <summary>Where it takes lines; null when it takes none.</summary>
    public IPEndPoint? LinesAddress => _app.Services.GetService<LineFeed>()?.Address;

    /// <summary>The file or the database that holds the record.</summary>
    public string RecordPlace => _store.Place;

    /// <summary>What the host is made of.</summary>
    internal IServiceProvider Services => _app.Services;

    /// <summary>Opens the host and begins to listen.</summary>
    /// <param name="options">How it is to be.</param>
    /// <param name="cancellationToken">Ends the start.</param>
    /// <exception cref="UserException">An address cannot be had, or needs a passphrase that is not set.</exception>
    public static async Task<ConsoleHost> OpenAsync(ConsoleOptions options, CancellationToken cancellationToken)
    {
        var hosts = Binding.HostsOf(options.Urls);
        var onNetwork = !hosts.All(Binding.IsLocal);
        var place = Path.GetFullPath(options.DataFolder ?? DataFolder.UsualPlace());
        if (onNetwork)
        {
            Binding.RequirePassphrase(place, $"--urls {options.Urls}");
        }

        if (options.Lines is { } lines && !IPAddress.IsLoopback(lines.Address))
        {
            Binding.RequirePassphrase(place, $"--lines {lines}");
        }

        var folder = DataFolder.Open(place);
        IRecordStore? store = null;
        try
        {
            store = StoreForWriting.Open(options.Record, folder);
            var settings = new ConsoleSettings
            {
                DataFolder = place,
                RecordPlace = store.Place,
                OnNetwork = onNetwork,
                HostNames = [.. hosts.Concat(options.HostNames), Dns.GetHostName(), $"{Dns.GetHostName()}.local"],
                ShotsASecond = options.ShotsASecond,
            };
            var app = Build(options, settings, store);
            app.MapConsole();
            await app.StartAsync(cancellationToken).ConfigureAwait(false);
            return new ConsoleHost(folder, store, app);
        }
        catch (Exception exception)
        {
            store?.Dispose();
            folder.Dispose();
            throw exception switch
            {
                SocketException when options.Lines is not null => new UserException($"--lines {options.Lines}: {exception.Message.TrimEnd('.')}: name another port", ExitCodes.Failed),
                SocketException or IOException { InnerException: AddressInUseException or SocketException } or FormatException or InvalidOperationException { Source: Server } =>
                    new UserException($"--urls {options.Urls}: {exception.Message.TrimEnd('.')}: name another address, such as {UsualUrl}", ExitCodes.Failed),
                InvalidDataException => new UserException(exception.Message),
                IOException or UnauthorizedAccessException => new UserException($"{place}: {exception.Message.TrimEnd('.')}: see that the folder can be read and written", ExitCodes.Failed),
                _ => exception,
            };
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

    /// <summary>A web application with nothing in it yet but a server for this program's pages.</summary>
    internal static WebApplicationBuilder Bare(LogFormat logs = LogFormat.Text)
    {
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder.WebHost.UseKestrelCore();
        builder.Services.AddRouting();
        builder.Services.AddSingleton<ISessionDocuments, SessionDocuments>();
        builder.Logging.AddSimpleConsole(console => console.SingleLine = true).SetMinimumLevel(LogLevel.Warning);
        if (logs == LogFormat.Json)
        {
            builder.Logging.AddJsonConsole(console => console.UseUtcTimestamp = true);
        }

        return builder;
    }

    private static WebApplication Build(ConsoleOptions options, ConsoleSettings settings, IRecordStore store)
    {
        var builder = Bare(options.Logs);
        options.Adjust?.Invoke(builder.Services);

        // Both do nothing unless the system's own keeper of services started this process.
        builder.Services.AddSystemd();
        builder.Services.AddWindowsService(service => service.ServiceName = "AimTrainer");
        if (options.Logs == LogFormat.Json)
        {
            builder.Services.Configure<ConsoleLoggerOptions>(console => console.FormatterName = ConsoleFormatterNames.Json);
        }

        if (options.Telemetry is { } collector)
        {
            Collector.Add(builder.Services, collector);
        }

        builder.Services.TryAddSingleton<ISessionStore>(store);
        builder.Services.TryAddSingleton<IPracticeRecord>(store);
        builder.Services.AddSingleton(provider => new RecordErasure(store, settings.DataFolder, provider.GetRequiredService<TimeProvider>()));
        builder.Services.TryAddSingleton<IRecordErasure>(provider => provider.GetRequiredService<RecordErasure>());
        if (options.Record is { } database)
        {
            builder.Services.AddSingleton<IRecordCheck>(provider => new DatabaseReadiness(database, provider.GetRequiredService<TimeProvider>()));
        }

        builder.Services.AddStations(options.Stations);
        if (options.Lines is { } address)
        {
            AddLines(builder.Services, address);
        }

        if (options.Chain is { } link)
        {
            var files = new CenterFiles(settings.DataFolder);
            builder.Services.AddSingleton(provider => new CenterSync(
                store, link, files, provider.GetRequiredService<RecordErasure>(), provider.GetRequiredService<TimeProvider>(),
                new CenterGroups(provider.GetRequiredService<GroupRegister>(), provider.GetRequiredService<ProgramShelf>())));
            builder.Services.AddHostedService<ChainSender>();
        }

        builder.Services.AddConsole(settings);
        var app = builder.Build();
        foreach (var url in Binding.Split(options.Urls))
        {
            app.Urls.Add(url);
        }

        return app;
    }

    private static void AddLines(IServiceCollection services, IPEndPoint address)
    {
        services.AddSingleton(provider => new LineFeed(
            new LineFeedSettings { Address = address }, provider.GetRequiredService<IReadOnlyList<Station>>(), provider.GetRequiredService<ISessionStore>(),
            provider.GetRequiredService<IFeedGate>(), provider.GetRequiredService<TimeProvider>(),
            new LineFeedEvents((_, _, _) => { }, new LineNotices(provider.GetRequiredService<ILogger<LineFeed>>()).Say)));
        services.AddSingleton<IFeedWatch>(provider => provider.GetRequiredService<LineFeed>());
        services.AddHostedService(provider => provider.GetRequiredService<LineFeed>());
    }
}
