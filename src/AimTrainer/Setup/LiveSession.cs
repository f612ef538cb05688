using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Store;
using AimTrainer.Store.Postgres;
using AimTrainer.Store.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace AimTrainer.Setup;

/// <summary>A station that runs in a host, with its store: what <c>demo</c> and <c>run</c> share.</summary>
internal sealed class LiveSession : IAsyncDisposable
{
    private readonly DataFolder _folder;
    private readonly IRecordStore _store;
    private readonly IHost _host;
    private readonly ISessionView _view;

    private LiveSession(DataFolder folder, IRecordStore store, IHost host, Station station, ISessionView view)
    {
        Erasure = new RecordErasure(store, folder.FolderPath, host.Services.GetRequiredService<TimeProvider>());
        (_folder, _store, _host, _view, Station) = (folder, store, host, view, station);
        Stopping = host.Services.GetRequiredService<IHostApplicationLifetime>().ApplicationStopping;
    }

    public Station Station { get; }

    /// <summary>Clears the result from the displays that this session opened; null when it opened none.</summary>
    public Action? ClearDisplays { get; set; }

    public ISessionStore Store => _store;

    /// <summary>What bowlers practised.</summary>
    public IPracticeRecord Practice => _store;

    /// <summary>Takes people out of the record.</summary>
    public IRecordErasure Erasure { get; }

    /// <summary>All stations of this process.</summary>
    public IReadOnlyList<Station> Stations => _host.Services.GetRequiredService<IReadOnlyList<Station>>();

    public TimeProvider Clock => _host.Services.GetRequiredService<TimeProvider>();

    /// <summary>Cancelled by Ctrl+C or a request to stop.</summary>
    public CancellationToken Stopping { get; }

    /// <summary>The file that holds the record.</summary>
    public string RecordFile => _folder.DatabaseFile;

    /// <summary>The file or the database that holds the record, for people.</summary>
    public string RecordPlace => _store.Place;

    /// <param name="dataFolder">Where the record is; null is the usual place.</param>
    /// <param name="stationNumber">The station.</param>
    /// <param name="view">What happens is shown there.</param>
    /// <param name="record">The database that holds the record; null for the folder's file.</param>
    public static async Task<LiveSession> OpenAsync(string? dataFolder, int stationNumber, ISessionView view, PostgresPlace? record)
    {
        var folder = DataFolder.Open(dataFolder);
        IRecordStore? store = null;
        try
        {
            store = StoreForWriting.Open(record, folder);
            var builder = new HostApplicationBuilder(new HostApplicationBuilderSettings { DisableDefaults = true });
            builder.Services.AddSingleton<ISessionStore>(store);
            builder.Services.AddSingleton<IScreenNames>(new PeopleRegister(folder.FolderPath));
            builder.Services.AddStations(stationNumber);
            var host = builder.Build();
            await host.StartAsync().ConfigureAwait(false);
            var station = host.Services.GetRequiredService<IReadOnlyList<Station>>()[stationNumber - 1];
            var live = new LiveSession(folder, store, host, station, view);
            await live.EraseAgainAsync().ConfigureAwait(false);
            return live;
        }
        catch
        {
            store?.Dispose();
            folder.Dispose();
            throw;
        }
    }

    /// <summary>The session that this station was left with, or null.</summary>
    public async Task<StoredSession?> LeftOpenAsync()
    {
        var filter = new SessionFilter { Station = Station.Number, Ended = false, Limit = 1 };
        var open = await _store.ListAsync(filter, Stopping).ConfigureAwait(false);
        return open.Count == 0 ? null : await _store.FindAsync(open[0].SessionId, Stopping).ConfigureAwait(false);
    }

    /// <summary>Begins a new session.</summary>
    public async Task StartAsync(SessionSetup setup, DrillSource drill)
    {
        Accepted(await Station.StartAsync(setup, drill, Stopping).ConfigureAwait(false));
        _view.Opened(setup, drill.Script, Station.Snapshot, goesOn: false);
        await FollowAsync(new SessionInput.Begin(Clock.GetUtcNow())).ConfigureAwait(false);
    }

    /// <summary>Goes on with a session that was left.</summary>
    public async Task GoOnAsync(StoredSession stored)
    {
        Accepted(await Station.GoOnAsync(stored, Stopping).ConfigureAwait(false));
        _view.Opened(stored.Setup, Station.Snapshot.Drill!, Station.Snapshot, goesOn: true);
        if (Station.Snapshot.Phase == SessionPhase.Waiting)
        {
            await FollowAsync(new SessionInput.Begin(Clock.GetUtcNow())).ConfigureAwait(false);
        }
    }

    /// <summary>Sends an input and shows what came of it.</summary>
    public async Task FollowAsync(SessionInput input)
    {
        switch (await Station.FollowAsync(input, Stopping).ConfigureAwait(false))
        {
            case StationReply.Kept { Entry: { } entry }:
                _view.Kept(entry, Station.Snapshot);
                break;
            case StationReply.Refused refused:
                _view.Notice(refused.Why);
                break;
            case StationReply.NotKept notKept:
                _view.Notice($"not kept, so it does not count: {notKept.Why}");
                break;
            case StationReply.TakenBefore:
                _view.Notice("this shot came before; it was taken once");
                break;
            default:
                break;
        }
    }

    /// <summary>Carries a feed's shots until it, or the session, ends.</summary>
    public Task PumpAsync(IShotFeed feed, CancellationToken cancellationToken) =>
        new FeedPump(Station, Clock, entry => _view.Kept(entry, Station.Snapshot), _view.Notice).RunAsync(feed, cancellationToken);

    /// <summary>Shows the record of the session.</summary>
    public async Task SummariseAsync()
    {
        if (Station.Snapshot is { Setup: { } setup, Drill: { } drill })
        {
            var record = await SessionReader.RecordAsync(_store, setup.SessionId, CancellationToken.None).ConfigureAwait(false);
            _view.Summary(setup, drill, record, _store.Place);
        }
    }

    public async ValueTask DisposeAsync()
    {
        await _host.StopAsync().ConfigureAwait(false);
        _host.Dispose();
        _store.Dispose();
        _folder.Dispose();
    }

    /// <summary>What was erased once does not come back with a copy of the record. When it cannot be seen to, it is said, and the session goes on.</summary>
    private async Task EraseAgainAsync()
    {
        try
        {
            await Erasure.EraseAgainAsync(Stopping).ConfigureAwait(false);
        }
        catch (StoreUnavailableException exception)
        {
            _view.Notice(exception.Message);
        }
    }

    private static void Accepted(StationReply reply)
    {
        switch (reply)
        {
            case StationReply.Refused refused:
                throw new UserException(refused.Why);
            case StationReply.NotKept notKept:
                throw new UserException(notKept.Why, ExitCodes.Failed);
            default:
                break;
        }
    }
}
