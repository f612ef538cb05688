using AimTrainer.Display;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Store;

namespace AimTrainer.Setup;

/// <summary>
/// Follows the newest session of a station in the record while another process runs it. What is wrong with the record is told beside
/// the last picture, which stays.
/// </summary>
internal sealed class DisplayRecord(string? dataFolder, int station, TimeProvider clock, NewsSlot slot)
{
    /// <summary>A session's pace is a shot in half a minute: a picture a tenth of a second late is not.</summary>
    public static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(100);

    /// <summary>A record that is just being made, or put in the place of another, cannot be read for a moment: that is not worth a word.</summary>
    private const int FailuresBeforeSaid = 5;

    private IRecordStore? _store;
    private SessionFollower? _follower;
    private SessionProgress? _shown;
    private string? _problem;
    private bool _hasLooked;
    private int _failures;

    /// <summary>Told what is wrong with the record, once for each thing, and when it is well again.</summary>
    public Action<string> Say { get; init; } = _ => { };

    /// <summary>Opens the record, where it is not in the folder.</summary>
    public Func<IRecordStore>? Open { get; init; }

    /// <summary>Looks until cancelled.</summary>
    public async Task RunAsync(CancellationToken cancellationToken)
    {
        using var timer = new PeriodicTimer(LookEvery, clock);
        do
        {
            await LookAsync(cancellationToken).ConfigureAwait(false);
        }
        while (await timer.WaitForNextTickAsync(cancellationToken).ConfigureAwait(false));
    }

    /// <summary>Looks once.</summary>
    public async Task LookAsync(CancellationToken cancellationToken)
    {
        try
        {
            _store ??= Open?.Invoke() ?? StoreForReading.Open(dataFolder);
            await FollowAsync(_store, cancellationToken).ConfigureAwait(false);
            _failures = 0;
        }
        catch (Exception exception) when (exception is UserException or StoreUnavailableException)
        {
            // Opened anew at the next look: the file may be another one by then.
            _store?.Dispose();
            _store = null;
            if (exception is UserException || ++_failures >= FailuresBeforeSaid)
            {
                Tell(slot.Newest.Snapshot, exception.Message);
            }
        }
    }

    private async Task FollowAsync(IRecordStore store, CancellationToken cancellationToken)
    {
        var progress = await store.NewestOfStationAsync(station, cancellationToken).ConfigureAwait(false);
        var isFirst = !_hasLooked;
        _hasLooked = true;
        if (progress is null || (isFirst && progress.Ended))
        {
            // A session that was over before this display began is nothing to show: the lane waits for the next.
            (_shown, _follower) = (progress, null);
            Tell(SessionSnapshot.Idle(station), null);
            return;
        }

        if (progress == _shown)
        {
            Tell(slot.Newest.Snapshot, _problem);
            return;
        }

        _problem = await CatchUpAsync(store, progress, cancellationToken).ConfigureAwait(false);
        _shown = progress;
        Tell(_follower?.Snapshot ?? slot.Newest.Snapshot, _problem);
    }

    private async Task<string?> CatchUpAsync(IRecordStore store, SessionProgress progress, CancellationToken cancellationToken)
    {
        // A record that was restored meanwhile may have fewer steps than before: begin again.
        if (_shown?.SessionId != progress.SessionId || _follower is null || _follower.Sequence > progress.Sequence)
        {
            _follower = null;
            var stored = await store.FindAsync(progress.SessionId, cancellationToken).ConfigureAwait(false);
            if (stored is null)
            {
                return null;
            }

            (_follower, var problem) = SessionFollower.Open(stored);
            if (_follower is null)
            {
                return CannotBeShown(progress, problem!);
            }
        }

        await foreach (var entry in store.ReadLogAsync(progress.SessionId, _follower.Sequence, cancellationToken).ConfigureAwait(false))
        {
            if (_follower.Take(entry) is { } why)
            {
                return CannotBeShown(progress, why);
            }
        }

        return null;
    }

    private static string CannotBeShown(SessionProgress progress, string why) =>
        $"session {progress.SessionId} cannot be shown: {why}; use the same version of aimtrainer for the display as for the session";

    private void Tell(SessionSnapshot snapshot, string? notice)
    {
        var now = slot.Newest;
        if (notice != now.Notice)
        {
            Say(notice ?? "the record can be read again");
        }

        if (snapshot.Setup?.SessionId != now.Snapshot.Setup?.SessionId || snapshot.Version != now.Snapshot.Version || notice != now.Notice)
        {
            slot.Put(new DisplayNews(snapshot, notice));
        }
    }
}
