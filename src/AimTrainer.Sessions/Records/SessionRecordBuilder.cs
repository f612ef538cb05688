using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>Puts a record together from the events of a session. Takes them as they are: nothing is graded again.</summary>
public sealed class SessionRecordBuilder
{
    private readonly List<BlockInWork> _blocks = [];
    private readonly Dictionary<int, (BlockInWork Block, int Index)> _shots = [];
    private readonly List<Shot> _setAside = [];
    private readonly List<string> _notes = [];
    private string? _endedWhy;

    /// <summary>Takes the events of the next step.</summary>
    public void Add(ValueList<SessionEvent> events)
    {
        foreach (var happened in events)
        {
            Add(happened);
        }
    }

    /// <summary>Takes the next event.</summary>
    public void Add(SessionEvent happened)
    {
        switch (happened)
        {
            case SessionEvent.BlockBegan began:
                _blocks.Add(new BlockInWork(began));
                break;
            case SessionEvent.ShotGraded graded:
                var block = _blocks[^1];
                _shots[graded.Shot.Number] = (block, block.Shots.Count);
                block.Shots.Add(new RecordedShot(graded.Shot, null, graded.NextWidths));
                break;
            case SessionEvent.ShotVoided voided:
                Change(voided.Number, shot => shot with { Shot = shot.Shot with { VoidReason = voided.Reason } });
                break;
            case SessionEvent.ShotCorrected corrected:
                Change(corrected.After.Number, shot => shot with { Shot = corrected.After, AsFirstGraded = shot.AsFirstGraded ?? corrected.Before });
                break;
            case SessionEvent.BlockEnded ended:
                _blocks[^1].Ended = ended;
                break;
            case SessionEvent.ShotSetAside aside:
                _setAside.Add(aside.Shot);
                break;
            case SessionEvent.NoteTaken note:
                _notes.Add(note.Text);
                break;
            case SessionEvent.SessionEnded ended:
                _endedWhy = ended.Why;
                break;
            default:
                break;
        }
    }

    /// <summary>The record so far.</summary>
    public SessionRecord Result() => new(
        _blocks.Select(block => block.Result()).ToValueList(), _setAside.ToValueList(), _notes.ToValueList(), _endedWhy);

    private void Change(int number, Func<RecordedShot, RecordedShot> change)
    {
        var (block, index) = _shots[number];
        block.Shots[index] = change(block.Shots[index]);
    }

    private sealed class BlockInWork(SessionEvent.BlockBegan began)
    {
        public List<RecordedShot> Shots { get; } = [];

        public SessionEvent.BlockEnded? Ended { get; set; }

        public BlockRecord Result()
        {
            var accumulator = new BlockSummaryAccumulator();
            foreach (var shot in Shots)
            {
                if (shot.Shot.VoidReason is null)
                {
                    accumulator.Add(shot.Shot.Targets);
                }
            }

            return new BlockRecord(began, Shots.ToValueList(), Ended, accumulator.Result);
        }
    }
}
