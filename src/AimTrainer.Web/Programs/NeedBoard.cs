using System.Globalization;
using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>Looks over all lanes: who needs the coach first, and why. Each session's log is read once, then only what is new of it.</summary>
public sealed class NeedBoard(IReadOnlyList<Station> stations, ISessionStore store, TimeProvider clock) : IDisposable
{
    private const string ArmNote = "Arm ";

    private readonly Dictionary<string, Followed> _followed = new(StringComparer.Ordinal);
    private readonly SemaphoreSlim _one = new(1);

    /// <summary>Every bowler of an open session, the one who needs help first at the top.</summary>
    public async Task<ValueList<LaneNeed>> LookAsync(CancellationToken cancellationToken)
    {
        await _one.WaitAsync(cancellationToken).ConfigureAwait(false);
        try
        {
            return await LookOverAsync(cancellationToken).ConfigureAwait(false);
        }
        finally
        {
            _one.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _one.Dispose();

    private async Task<ValueList<LaneNeed>> LookOverAsync(CancellationToken cancellationToken)
    {
        var now = clock.GetUtcNow();
        var found = new List<(LaneNeed Lane, BowlerNeed Need)>();
        var open = new HashSet<string>(StringComparer.Ordinal);
        foreach (var snapshot in stations.Select(station => station.Snapshot).Where(snapshot => snapshot.Setup is not null))
        {
            var throwers = snapshot.Turns is { } turns
                ? turns.Places.AsEnumerable().Where(place => place.Status == TurnStatus.Here).Select(place => (place.SessionId, Bowler: place.Bowler!, place.IsNow, place.Phase))
                : [(snapshot.Setup!.SessionId, snapshot.Setup.Bowler, IsNow: true, snapshot.Phase!.Value)];
            foreach (var (id, bowler, isNow, phase) in throwers.Where(one => one.Item4 is not SessionPhase.Ended))
            {
                open.Add(id);
                if (!_followed.TryGetValue(id, out var followed))
                {
                    _followed.Add(id, followed = new Followed());
                }

                var (shots, sore, drill) = await followed.CatchUpAsync(store, id, cancellationToken).ConfigureAwait(false);
                var need = NeedRule.Of(shots, sore, isNow && phase == SessionPhase.Throwing, now);
                found.Add((new LaneNeed(snapshot.Station, id, bowler, drill, shots.Count, isNow, need.Reasons, Words(need), need.SpreadRatio), need));
            }
        }

        foreach (var gone in _followed.Keys.Where(id => !open.Contains(id)).ToList())
        {
            _followed.Remove(gone);
        }

        return found.OrderBy(one => one.Need, NeedRule.MostPressingFirst).ThenBy(one => one.Lane.Station).Select(one => one.Lane).ToValueList();
    }

    private static ValueList<string> Words(BowlerNeed need)
    {
        var words = need.Reasons.AsEnumerable().Select(reason => reason switch
        {
            NeedKind.Sore => "soreness noted: ask, and stop if it hurts",
            NeedKind.Tired => $"tired? the spread grew and the throws got slower ({Figure(need.SpeedChangeMph, "0.0")} mph)",
            NeedKind.SpreadGrowing => "the spread grew",
            _ => string.Create(CultureInfo.InvariantCulture, $"no shot for {need.MinutesSinceShot:0} minutes, usually {need.UsualMinutes:0.0}"),
        }).ToList();
        words.Add(need.SpreadRatio.Value is null ? $"spread: not known yet ({need.SpreadRatio.Why})" : $"last ten against first ten: spread times {Figure(need.SpreadRatio, "0.00")}");
        return words.ToValueList();
    }

    private static string Figure(BoundedEstimate figure, string format) => figure is { Value: { } value, Low: { } low, High: { } high }
        ? string.Create(CultureInfo.InvariantCulture, $"{value.ToString(format, CultureInfo.InvariantCulture)} ({low.ToString(format, CultureInfo.InvariantCulture)} to {high.ToString(format, CultureInfo.InvariantCulture)})")
        : "not known";

    /// <summary>One session as far as its log was read.</summary>
    private sealed class Followed
    {
        private readonly SessionRecordBuilder _record = new();
        private long _sequence;
        private string? _drill;

        public async Task<(IReadOnlyList<PulseShot> Shots, bool Sore, string Drill)> CatchUpAsync(ISessionStore store, string id, CancellationToken cancellationToken)
        {
            _drill ??= await store.FindAsync(id, cancellationToken).ConfigureAwait(false) is { } stored
                ? DrillReader.Read(stored.Setup.DrillId, System.Text.Encoding.UTF8.GetBytes(stored.DrillJson)).Value?.Name ?? stored.Setup.DrillId : "";
            await foreach (var entry in store.ReadLogAsync(id, _sequence, cancellationToken).ConfigureAwait(false))
            {
                _record.Add(entry.Events);
                _sequence = entry.Sequence;
            }

            var record = _record.Result();
            var shots = record.Blocks.AsEnumerable().SelectMany(block => block.Shots).Select(shot => shot.Shot).Where(shot => shot.VoidReason is null && shot.Targets.Count > 0)
                .Select(shot => new PulseShot(shot.At, $"{shot.Aim}@{shot.Targets[0].Target.Distance}", shot.Targets[0].Miss?.Boards, shot.Shot.Speed?.Value.Value)).ToList();
            var arm = record.Notes.AsEnumerable().LastOrDefault(note => note.StartsWith(ArmNote, StringComparison.Ordinal));
            return (shots, arm?.StartsWith($"{ArmNote}sore", StringComparison.Ordinal) ?? false, _drill);
        }
    }
}
