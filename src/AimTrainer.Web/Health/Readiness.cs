using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using AimTrainer.Store;

namespace AimTrainer.Web;

/// <summary>
/// Looks whether the host can do its work: the folder can be written to, the disk has room, the store answers, every station does.
/// What was found holds for a second, so that nobody can keep the host busy by asking.
/// </summary>
/// <param name="settings">Where the data folder is.</param>
/// <param name="stations">The stations.</param>
/// <param name="store">The store.</param>
/// <param name="clock">The time.</param>
/// <param name="sync">What sends to the chain; null where there is none.</param>
internal sealed class Readiness(ConsoleSettings settings, IReadOnlyList<Station> stations, ISessionStore store, TimeProvider clock, CenterSync? sync = null) : IDisposable
{
    /// <summary>Less room than this on the disk is too little: an evening of 64 lanes needs about a tenth of it.</summary>
    private const long LeastFreeBytes = 256L << 20;

    private static readonly TimeSpan HoldsFor = TimeSpan.FromSeconds(1), Patience = TimeSpan.FromSeconds(3);

    private readonly SemaphoreSlim _one = new(1, 1);
    private long _lookedAt;
    private HealthAnswer? _last;

    /// <summary>Room on the disk of a folder, bytes; another for tests.</summary>
    internal Func<string, long> FreeBytes { get; init; } = folder => new DriveInfo(folder).AvailableFreeSpace;

    /// <summary>Looks, or tells what was found a moment ago.</summary>
    public async Task<HealthAnswer> LookAsync(CancellationToken cancellationToken)
    {
        await _one.WaitAsync(cancellationToken).ConfigureAwait(false);
        try
        {
            if (_last is null || clock.GetElapsedTime(_lookedAt) >= HoldsFor)
            {
                // Never cancelled by one who asks and leaves: the next one gets this answer.
                var checks = await Task.WhenAll(Task.FromResult(Folder()), Task.FromResult(Disk()), StoreAsync(), StationsAsync()).ConfigureAwait(false);
                if (sync is not null)
                {
                    checks = [.. checks, Chain(sync.State)];
                }

                _last = new HealthAnswer(checks.All(check => check.Ok || !check.Needed), checks.Any(check => !check.Ok && !check.Needed), checks.ToValueList());
                _lookedAt = clock.GetTimestamp();
            }

            return _last;
        }
        finally
        {
            _one.Release();
        }
    }

    public void Dispose() => _one.Dispose();

    /// <summary>The lanes know nothing of the chain: whatever is wrong with it, the host does its work.</summary>
    private static HealthCheck Chain(SyncState state)
    {
        var waiting = state.WaitingSteps is { } steps ? string.Create(CultureInfo.InvariantCulture, $"{steps} steps wait") : "how many steps wait is not known";
        var reached = state.ReachedAt is { } at ? string.Create(CultureInfo.InvariantCulture, $"last reached {at.UtcDateTime:yyyy-MM-dd HH:mm:ss} UTC") : "never reached";
        var found = $"{state.Chain}: {reached}, {waiting}";
        return (state.Error is { } error ? new HealthCheck("chain", false, $"{found}; {error}")
            : state.SetAside.Count > 0 ? new HealthCheck("chain", false, string.Create(CultureInfo.InvariantCulture, $"{found}; {state.SetAside.Count} sessions are not taken: the settings page, and aimtrainer sync status, tell why"))
            : new HealthCheck("chain", true, found)) with
        { Needed = false };
    }

    private HealthCheck Folder()
    {
        var file = Path.Combine(settings.DataFolder, $"ready.{Guid.NewGuid():n}.tmp");
        try
        {
            using var stream = new FileStream(file, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose);
            stream.WriteByte(1);
            stream.Flush(flushToDisk: true);
            return new HealthCheck("data folder", true, $"{settings.DataFolder} can be written to");
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return new HealthCheck("data folder", false, $"{settings.DataFolder}: {exception.Message.TrimEnd('.')}: see to its rights and its disk");
        }
    }

    private HealthCheck Disk()
    {
        try
        {
            var free = FreeBytes(settings.DataFolder);
            var text = string.Create(CultureInfo.InvariantCulture, $"{free >> 20} MiB are free");
            return free >= LeastFreeBytes ? new HealthCheck("disk", true, text)
                : new HealthCheck("disk", false, string.Create(CultureInfo.InvariantCulture, $"{text}; at least {LeastFreeBytes >> 20} MiB should be: make room before shots can no longer be kept"));
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return new HealthCheck("disk", false, $"how much room there is cannot be told: {exception.Message.TrimEnd('.')}");
        }
    }

    private async Task<HealthCheck> StoreAsync()
    {
        try
        {
            await store.ListAsync(new SessionFilter { Limit = 1 }, CancellationToken.None).WaitAsync(Patience, clock).ConfigureAwait(false);
            return new HealthCheck("store", true, "it answers");
        }
        catch (StoreUnavailableException exception)
        {
            return new HealthCheck("store", false, exception.Message);
        }
        catch (TimeoutException)
        {
            return new HealthCheck("store", false, "no answer within 3 s: see to the disk, or the database");
        }
    }

    /// <summary>A tick of the clock goes through the station's own door and changes nothing that would not change within a second.</summary>
    private async Task<HealthCheck> StationsAsync()
    {
        var silent = new List<int>();
        await Task.WhenAll(stations.Select(async station =>
        {
            try
            {
                var reply = await station.FollowAsync(new SessionInput.ClockTick(clock.GetUtcNow()), CancellationToken.None).WaitAsync(Patience, clock).ConfigureAwait(false);
                if (reply is not StationReply.NotKept)
                {
                    return;
                }
            }
            catch (TimeoutException)
            {
                // It hangs.
            }

            lock (silent)
            {
                silent.Add(station.Number);
            }
        })).ConfigureAwait(false);
        return silent.Count == 0
            ? new HealthCheck("stations", true, string.Create(CultureInfo.InvariantCulture, $"all {stations.Count} answer"))
            : new HealthCheck("stations", false, $"no answer of {string.Join(", ", silent.Order())}: start the host again; what was acknowledged is kept");
    }
}
