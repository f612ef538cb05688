using AimTrainer.Display;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Store;
using AimTrainer.Store.Sqlite;

namespace AimTrainer.Setup;

/// <summary>
/// Follows a station in the record while another process runs it: whoever's turn it is where several bowlers share the lane, else the
/// newest session; names as they may be shown. What is wrong with the record is told beside the last picture, which stays.
/// </summary>
internal sealed class DisplayRecord
{
    /// <summary>A session's pace is a shot in half a minute: a picture a tenth of a second late is not.</summary>
    public static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(100);

    /// <summary>A record that is just being made, or put in the place of another, cannot be read for a moment: that is not worth a word.</summary>
    private const int FailuresBeforeSaid = 5;

    private readonly string? _dataFolder;
    private readonly int _station;
    private readonly TimeProvider _clock;
    private readonly NewsSlot _slot;
    private readonly LineupFiles _lineups;
    private readonly PeopleReader _names;
    private readonly LaneFollower _lane;
    private readonly Dictionary<string, SessionFollower> _followers = new(StringComparer.Ordinal);
    private IRecordStore? _store;
    private LaneLook? _shown;
    private string? _problem;
    private bool _hasLooked;
    private int _failures;

    /// <param name="dataFolder">The folder of the record, of the orders of the lanes and of what was agreed about names; null for the usual one.</param>
    /// <param name="station">The station.</param>
    /// <param name="clock">The time.</param>
    /// <param name="slot">Where the pictures go.</param>
    public DisplayRecord(string? dataFolder, int station, TimeProvider clock, NewsSlot slot)
    {
        (_dataFolder, _station, _clock, _slot) = (dataFolder, station, clock, slot);
        var folder = Path.GetFullPath(dataFolder ?? DataFolder.UsualPlace());
        (_lineups, _names) = (new LineupFiles(folder), new PeopleReader(folder));
        _lane = new LaneFollower(station, _names);
    }

    /// <summary>Told what is wrong with the record, once for each thing, and when it is well again.</summary>
    public Action<string> Say { get; init; } = _ => { };

    /// <summary>Opens the record, where it is not in the folder.</summary>
    public Func<IRecordStore>? Open { get; init; }

    /// <summary>Looks until cancelled.</summary>
    public async Task RunAsync(CancellationToken cancellationToken)
    {
        using var timer = new PeriodicTimer(LookEvery, _clock);
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
            _store ??= Open?.Invoke() ?? StoreForReading.Open(_dataFolder);
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
                Tell(_slot.Newest.Snapshot, exception.Message);
            }
        }
    }

    private async Task FollowAsync(IRecordStore store, CancellationToken cancellationToken)
    {
        var look = await LaneLook.AtAsync(store, _lineups, _station, cancellationToken).ConfigureAwait(false);
        var isFirst = !_hasLooked;
        _hasLooked = true;
        if (look.Sessions.Count == 0 || (isFirst && look.IsOver))
        {
            // What was over before this display began is nothing to show: the lane waits for the next.
            _followers.Clear();
            _shown = look;
            Tell(SessionSnapshot.Idle(_station), null);
            return;
        }

        if (look == _shown && !_names.Look())
        {
            Tell(_slot.Newest.Snapshot, _problem);
            return;
        }

        if (look != _shown || _followers.Count > 0)
        {
            _problem = await CatchUpAsync(store, look, cancellationToken).ConfigureAwait(false);
            _shown = look;
        }

        Tell(_problem is null && _followers.Count > 0 ? Picture(look) : _slot.Newest.Snapshot, _problem);
    }

    private SessionSnapshot Picture(LaneLook look) =>
        look.Lineup is { } lineup ? _lane.Together(lineup, _followers) : _lane.Alone(_followers[look.Sessions[0].SessionId]);

    /// <returns>Null, or why it cannot be shown.</returns>
    private async Task<string?> CatchUpAsync(IRecordStore store, LaneLook look, CancellationToken cancellationToken)
    {
        foreach (var left in _followers.Keys.Except(look.Sessions.AsEnumerable().Select(session => session.SessionId)).ToList())
        {
            _followers.Remove(left);
        }

        foreach (var progress in look.Sessions)
        {
            if (await CatchUpAsync(store, progress, cancellationToken).ConfigureAwait(false) is { } problem)
            {
                _followers.Remove(progress.SessionId);
                return problem;
            }
        }

        return null;
    }

    private async Task<string?> CatchUpAsync(IRecordStore store, SessionProgress progress, CancellationToken cancellationToken)
    {
        // A record that was restored meanwhile may have fewer steps than before: begin again.
        if (!_followers.TryGetValue(progress.SessionId, out var follower) || follower.Sequence > progress.Sequence)
        {
            _followers.Remove(progress.SessionId);
            if (await store.FindAsync(progress.SessionId, cancellationToken).ConfigureAwait(false) is not { } stored)
            {
                return null;
            }

            (var opened, var problem) = SessionFollower.Open(stored);
            if (opened is null)
            {
                return CannotBeShown(progress, problem!);
            }

            _followers[progress.SessionId] = follower = opened;
        }

        if (follower.Sequence == progress.Sequence)
        {
            return null;
        }

        // No farther than was looked: what comes meanwhile may have moved the turn, and is taken with it at the next look.
        await foreach (var entry in store.ReadLogAsync(progress.SessionId, follower.Sequence, cancellationToken).ConfigureAwait(false))
        {
            if (entry.Sequence > progress.Sequence)
            {
                break;
            }

            if (follower.Take(entry) is { } why)
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
        var now = _slot.Newest;
        if (notice != now.Notice)
        {
            Say(notice ?? "the record can be read again");
        }

        if (notice != now.Notice || !DisplayNews.IsSame(snapshot, now.Snapshot))
        {
            _slot.Put(new DisplayNews(snapshot, notice));
        }
    }
}
