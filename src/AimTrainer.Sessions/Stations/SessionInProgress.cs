using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A session while a station runs it: the pure state, and what a station needs beside it. One reader owns it.</summary>
internal sealed class SessionInProgress(SessionState state)
{
    private const int LastShown = 10;

    private readonly DuplicateShots _seen = new();
    private Told _told = Told.Nothing;
    private int _points;

    public SessionState State { get; private set; } = state;

    /// <summary>The sequence of the last step that was kept.</summary>
    public long Sequence { get; private set; }

    public bool HasSeen(Shot shot) => _seen.Contains(shot);

    /// <summary>Takes over a step that was kept.</summary>
    public void Accept(LogEntry entry, SessionState next)
    {
        State = next;
        Sequence = entry.Sequence;
        if (entry.Input is SessionInput.ShotThrown thrown)
        {
            _seen.Add(thrown.Shot);
        }

        foreach (var happened in entry.Events)
        {
            switch (happened)
            {
                case SessionEvent.ShotGraded graded:
                    _told = graded.Told;
                    _points += graded.Shot.Points;
                    break;
                case SessionEvent.ShotCorrected { After.VoidReason: null } corrected:
                    _points += corrected.After.Points - corrected.Before.Points;
                    break;
                case SessionEvent.ShotVoided voided:
                    _points -= State.FindShot(voided.Number)!.Points;
                    break;
                case SessionEvent.BlockBegan:
                    // What was said of the last block must not be read as said of this one.
                    _told = Told.Nothing;
                    break;
                default:
                    break;
            }
        }
    }

    public SessionSnapshot Picture()
    {
        var accumulator = new BlockSummaryAccumulator();
        var shots = State.ShotsOfRun().ToList();
        for (var i = shots.Count - 1; i >= 0; i--)
        {
            if (shots[i].VoidReason is null)
            {
                accumulator.Add(shots[i].Targets);
            }
        }

        var block = State.BlockIndex is { } index ? State.Drill.Blocks[index] : null;
        return new SessionSnapshot
        {
            Station = State.Setup.Station,
            Version = Sequence,
            Setup = State.Setup,
            Phase = State.Phase,
            Drill = State.Drill,
            Block = block,
            BlockNumber = State.BlockIndex + 1 ?? 0,
            Shown = State.Shown,
            NextNumber = State.LastNumber + 1,
            Throws = State.Throws,
            Place = State.Place,
            LastShots = shots.Take(LastShown).ToValueList(),
            Told = _told,
            Summary = accumulator.Result,
            Points = _points,
        };
    }
}
