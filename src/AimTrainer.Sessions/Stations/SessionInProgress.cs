using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A session while a station runs it: the pure state, and what a station needs beside it. One reader owns it.</summary>
internal sealed class SessionInProgress(SessionState state)
{
    private const int LastShown = 10;

    /// <summary>So many actions are told apart from new ones, the newest; nobody sends one again after so many others.</summary>
    private const int ActionsRemembered = 4096;

    private readonly DuplicateShots _seen = new();
    private readonly HashSet<string> _actions = new(StringComparer.Ordinal);
    private readonly Queue<string> _actionsInOrder = new();
    private BlockSummaryAccumulator _summary = new();
    private Told _told = Told.Nothing;
    private FinishedBlock? _finished;
    private int _points;
    private ValueList<SessionEvent> _happened = [];

    public SessionState State { get; private set; } = state;

    /// <summary>The sequence of the last step that was kept.</summary>
    public long Sequence { get; private set; }

    /// <summary>Whether the same shot, or an action of the same id, was kept before.</summary>
    public bool HasSeen(SessionInput input) =>
        input is SessionInput.ShotThrown { Shot: var shot } ? _seen.Contains(shot) : input.ActionId is { } id && _actions.Contains(id);

    /// <summary>Takes over a step that was kept.</summary>
    public void Accept(LogEntry entry, SessionState next)
    {
        State = next;
        Sequence = entry.Sequence;
        _happened = entry.Events;
        if (entry.Input is SessionInput.ShotThrown thrown)
        {
            _seen.Add(thrown.Shot);
        }
        else if (entry.Input.ActionId is { } id && _actions.Add(id))
        {
            _actionsInOrder.Enqueue(id);
            if (_actionsInOrder.Count > ActionsRemembered)
            {
                _actions.Remove(_actionsInOrder.Dequeue());
            }
        }

        var recount = false;
        var told = (Told?)null;
        foreach (var happened in entry.Events)
        {
            switch (happened)
            {
                case SessionEvent.ShotGraded graded:
                    told = graded.Told;
                    _points += graded.Shot.Points;
                    _summary.Add(graded.Shot.Targets);
                    break;
                case SessionEvent.ShotCorrected corrected:
                    recount = true;
                    _points += corrected.After.VoidReason is null ? corrected.After.Points - corrected.Before.Points : 0;
                    break;
                case SessionEvent.ShotVoided voided:
                    recount = true;
                    _points -= State.FindShot(voided.Number)!.Points;
                    break;
                case SessionEvent.BlockEnded ended:
                    told = ended.Told ?? told;
                    _finished = Finished(ended);
                    break;
                case SessionEvent.BlockBegan:
                    // What is told as a block ends is still to be seen; what was told before must not be read as said of this one.
                    told ??= Told.Nothing;
                    _summary = new BlockSummaryAccumulator();
                    break;
                default:
                    break;
            }
        }

        _told = told ?? _told;
        if (recount)
        {
            Recount();
        }
    }

    public SessionSnapshot Picture()
    {
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
            Next = block is { ShowsNext: true } ? State.Next : null,
            NextNumber = State.LastNumber + 1,
            Throws = State.Throws,
            Place = State.Place,
            Turn = State.Turn,
            LastOfEach = LastOfEach(block),
            LastShots = State.ShotsOfRun().Take(LastShown).ToValueList(),
            Told = _told,
            Summary = _summary.Result,
            Finished = _finished,
            Points = _points,
            Happened = _happened,
        };
    }

    private ValueList<GradedShot> LastOfEach(DrillBlock? block)
    {
        if (block?.Order is not Order.Compare order)
        {
            return [];
        }

        var counted = State.ShotsOfRun().Where(shot => shot.VoidReason is null);
        var line = counted.FirstOrDefault()?.Aim;
        var last = new Dictionary<string, GradedShot>();
        foreach (var shot in counted.TakeWhile(shot => shot.Aim == line && last.Count < order.Balls.Count))
        {
            if (shot.Compared?.Role is { } role)
            {
                last.TryAdd(role, shot);
            }
        }

        return order.Balls.AsEnumerable().Where(last.ContainsKey).Select(role => last[role]).ToValueList();
    }

    private FinishedBlock Finished(SessionEvent.BlockEnded ended)
    {
        var number = 1;
        while (State.Drill.Blocks[number - 1].Name != ended.Name)
        {
            number++;
        }

        return new FinishedBlock(number, State.Drill.Blocks[number - 1], ended.Why, _summary.Result);
    }

    private void Recount()
    {
        _summary = new BlockSummaryAccumulator();
        foreach (var shot in State.ShotsOfRun().Reverse())
        {
            if (shot.VoidReason is null)
            {
                _summary.Add(shot.Targets);
            }
        }
    }
}
