using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace AimTrainer.Domain;

/// <summary>Works out one step: takes the state apart, collects what happens, puts the new state together.</summary>
internal sealed class SessionStepper(SessionState state, DateTimeOffset at)
{
    private readonly List<SessionEvent> _events = [];
    private SessionPhase _phase = state.Phase;
    private DateTimeOffset? _pausedAt = state.PausedAt;
    private int _lastNumber = state.LastNumber;
    private History? _past = state.Past;
    private ValueList<int> _runBlocks = state.RunBlocks;
    private BlockRun? _block = state.Current;

    public SessionStep Result()
    {
        var next = state with
        {
            Phase = _phase,
            PausedAt = _pausedAt,
            LastNumber = _lastNumber,
            Past = state.RemembersShots || SummaryWaits() ? _past : null,
            RunBlocks = _runBlocks,
            Current = _block,
        };
        return new SessionStep(next, ValueList.Create<SessionEvent>(CollectionsMarshal.AsSpan(_events)), null);
    }

    public string? Begin()
    {
        _phase = SessionPhase.Throwing;
        EnterBlock(0, 1);
        return null;
    }

    public string? Pause()
    {
        _phase = SessionPhase.Paused;
        _pausedAt = at;
        _events.Add(new SessionEvent.SessionPaused());
        return null;
    }

    public string? Resume()
    {
        var paused = at - _pausedAt!.Value;
        _block = _block! with { PausedFor = _block.PausedFor + (paused > TimeSpan.Zero ? paused : TimeSpan.Zero) };
        _phase = SessionPhase.Throwing;
        _pausedAt = null;
        _events.Add(new SessionEvent.SessionResumed());
        return null;
    }

    public string? End(string why)
    {
        if (_block is not null)
        {
            LeaveBlock(BlockEndReason.SessionEnded);
        }

        EndSession(string.IsNullOrWhiteSpace(why) ? "ended by hand" : why.Trim());
        return null;
    }

    public string? TakeNote(string text)
    {
        _events.Add(new SessionEvent.NoteTaken(text.Trim()));
        return null;
    }

    public string? Tick()
    {
        if (TimeIsUp(_block!))
        {
            GoOn(BlockEndReason.Minutes);
        }

        return null;
    }

    public string? Throw(Shot shot)
    {
        if (_phase != SessionPhase.Throwing)
        {
            _events.Add(new SessionEvent.ShotSetAside(
                shot, _phase == SessionPhase.Paused ? "the session was paused" : "the session had not begun"));
            return null;
        }

        var block = _block!;
        var aim = block.ShownAim;
        var turn = ComparedBalls.Turn(block, state.Setup.Balls);
        var graded = Compared(
            Graded(shot, block.Shown, block.Plan.Block, block.Run, _lastNumber + 1, block.Place), block.Plan.Block, shot.Ball, turn?.Due.Name, turn?.IsCheck);
        var fromOrder = block.ThrowAgain.IsEmpty;
        var order = fromOrder ? OrderRule(block).AfterThrow(block.Order, graded.Held == true, BallOf(block, graded), graded.Compared is { IsGood: true }) : block.Order;
        _past = new History(new HistoryItem.Thrown(graded, aim, block.Order.Visit), _past);
        _lastNumber = graded.Number;
        _block = block with
        {
            Slots = Sized(block, aim, graded),
            Order = order ?? block.Order,
            ThrowAgain = fromOrder ? block.ThrowAgain : block.ThrowAgain.Pop(),
            Throws = block.Throws + 1,
            HeldInARow = NextHeldInARow(block.HeldInARow, graded.Held),
        };
        var why = order is null ? OrderDone(block) : WhyOver(_block);
        _events.Add(new SessionEvent.ShotGraded(graded, NextWidths(block, _block, aim), Tell(graded, why is not null)));
        GoOn(why);
        return null;
    }

    public string? SkipAim()
    {
        var block = _block!;
        _events.Add(new SessionEvent.AimSkipped(block.Shown.Name));
        var fromOrder = block.ThrowAgain.IsEmpty;
        var order = fromOrder ? OrderRule(block).AfterSkip(block.Order) : block.Order;
        _block = block with { Order = order ?? block.Order, ThrowAgain = fromOrder ? block.ThrowAgain : block.ThrowAgain.Pop() };
        GoOn(order is null ? OrderDone(block) : null);
        return null;
    }

    public string? SkipBlock()
    {
        GoOn(BlockEndReason.Skipped);
        return null;
    }

    public string? RepeatAim()
    {
        var block = _block!;
        if (block.Plan.Block.Order is Order.Walk)
        {
            return "a walking line stays at its place until its shots are thrown: void a shot to throw it again";
        }

        if (block.Plan.Block.Order is Order.Compare)
        {
            return "a comparison stays at its line until every ball has its throws: void a shot to throw it again";
        }

        if (History.Items(_past, block.Run).OfType<HistoryItem.Thrown>().FirstOrDefault() is not { } last)
        {
            return "nothing has been thrown in this block yet, so there is nothing to repeat: throw first";
        }

        _events.Add(new SessionEvent.AimRepeated(last.Shot.Aim));
        _block = block with { ThrowAgain = block.ThrowAgain.Push(last.Aim) };
        Show();
        return null;
    }

    public string? RepeatBlock()
    {
        var block = _block!;
        LeaveBlock(BlockEndReason.Repeated);
        EnterBlock(block.Index, block.Attempt + 1);
        return null;
    }

    /// <summary>
    /// Takes a shot out of every count. One of the run that is thrown is thrown again: its aim is shown once more, or a walk
    /// or a comparison stays longer at its present place (they never go back to an earlier one). A block that is over stays over.
    /// </summary>
    public string? Void(int number, string reason)
    {
        if (string.IsNullOrWhiteSpace(reason))
        {
            return "say why the shot does not count";
        }

        if (History.Find(_past, number) is not { } thrown)
        {
            return NoSuchShot(number);
        }

        if (thrown.Shot.VoidReason is not null)
        {
            return $"shot {number} is void already: {thrown.Shot.VoidReason}";
        }

        _events.Add(new SessionEvent.ShotVoided(number, reason.Trim()));
        _past = History.Replace(_past!, thrown.Shot with { VoidReason = reason.Trim() });
        if (_block is { } block && thrown.Shot.Run == block.Run)
        {
            _block = block.Plan.Block.Order is Order.Walk or Order.Compare ? block : block with { ThrowAgain = block.ThrowAgain.Push(thrown.Aim) };
            Recount();
        }

        return null;
    }

    public string? Correct(int number, Shot shot)
    {
        if (History.Find(_past, number) is not { } thrown)
        {
            return NoSuchShot(number);
        }

        var before = thrown.Shot;
        var shown = new Aim(before.Aim, before.Targets.AsEnumerable().Select(result => new NamedTarget(result.Name, result.Target)).ToValueList());
        var drillBlock = state.Blocks[_runBlocks[before.Run]].Block;

        // A correction of the boards leaves the ball as it was; one that names a ball corrects that too.
        var ball = shot.Ball ?? (before.Compared is { IsNamed: true } named ? named.Ball : null);
        var after = Compared(
            Graded(shot, shown, drillBlock, before.Run, number, before.Place) with { At = before.At, VoidReason = before.VoidReason },
            drillBlock, ball, before.Compared?.Due, before.Compared?.CheckWasDue);
        _events.Add(new SessionEvent.ShotCorrected(before, after));
        _past = History.Replace(_past!, after);
        if (before.Run == _block?.Run && after.VoidReason is null)
        {
            Recount();
        }

        return null;
    }

    public string? ChangeTarget(SessionInput.ChangeTarget change)
    {
        var block = _block!;
        var shown = block.Shown.Targets;
        var index = IndexOf(shown, change.Target);
        if (index < 0)
        {
            return $"no target \"{change.Target}\" is shown; shown: {string.Join(", ", shown.Select(target => $"\"{target.Name}\""))}";
        }

        var aim = block.ShownAim;
        var rule = block.Plan.Block.Aims[aim].Targets[index].Sizing;
        if (Refused(change, rule, shown, index) is { } refusal)
        {
            return refusal;
        }

        var slotIndex = block.Plan.FirstSlot(aim) + index;
        var slot = block.Slots[slotIndex];
        var place = block.Plan.TargetsOf(aim, block.Order.Place)[index].Centre;
        var changed = slot with
        {
            Shift = change.Centre is { } centre ? centre - place : slot.Shift,
            Distance = change.Distance ?? slot.Distance,
            Sizing = change.Width is { } width ? rule.SetByHand(slot.Sizing, width) : slot.Sizing,
        };
        _block = block with { Slots = block.Slots.SetItem(slotIndex, changed) };
        if (change.Width is { } set)
        {
            _past = new History(new HistoryItem.WidthSet(block.Run, slotIndex, set), _past);
        }

        _events.Add(new SessionEvent.TargetChanged(change.Target, shown[index].Target, TargetOf(_block, aim, index)));
        Show();
        return null;
    }

    private static int IndexOf(ValueList<NamedTarget> targets, string name)
    {
        for (var i = 0; i < targets.Count; i++)
        {
            if (targets[i].Name == name)
            {
                return i;
            }
        }

        return -1;
    }

    private static string? Refused(SessionInput.ChangeTarget change, Sizing rule, ValueList<NamedTarget> shown, int index)
    {
        if (change is { Width: null, Centre: null, Distance: null })
        {
            return "say what to change: width, centre or distance";
        }

        if (change.Width is { } width && (width < rule.Narrowest || width > rule.Widest))
        {
            return $"a width of {width} boards is outside this block's limits: give {rule.Narrowest} to {rule.Widest}";
        }

        if (change.Centre is { } centre && (centre < Board.NearEdge || centre > Board.FarEdge))
        {
            return $"board {centre} is not on the lane: give a centre of {Board.NearEdge} to {Board.FarEdge}";
        }

        if (change.Distance is not { } distance)
        {
            return null;
        }

        if (distance < default(Feet) || distance > LaneProfile.HeadPin)
        {
            return $"{distance} ft is not on the lane: give a distance of 0 to {LaneProfile.HeadPin} ft";
        }

        if (index > 0 && distance <= shown[index - 1].Target.Distance)
        {
            return $"the targets of a line keep their order along the lane: give more than {shown[index - 1].Target.Distance} ft, where \"{shown[index - 1].Name}\" is";
        }

        return index < shown.Count - 1 && distance >= shown[index + 1].Target.Distance
            ? $"the targets of a line keep their order along the lane: give less than {shown[index + 1].Target.Distance} ft, where \"{shown[index + 1].Name}\" is"
            : null;
    }

    /// <summary>Whether shots wait to be told in a summary.</summary>
    private bool SummaryWaits() => _block is { Plan.Block.Feedback.When: FeedbackWhen.Summary } block && block.ToldUpTo < _lastNumber;

    private string NoSuchShot(int number) => _lastNumber == 0
        ? $"there is no shot {number}: none has been thrown"
        : $"there is no shot {number}: give a number from 1 to {_lastNumber}";

    private GradedShot Graded(Shot shot, Aim shown, DrillBlock block, int run, int number, int place)
    {
        var results = Grader.Grade(shot, shown, block.Bands);
        var launchAngle = LaunchAngles.Of(shot, state.Setup.Lane);
        return new GradedShot
        {
            Number = number,
            At = at,
            Shot = shot,
            Run = run,
            Aim = shown.Name,
            Targets = results,
            Held = Grader.Held(results),
            Points = Grader.Points(results),
            Comparability = ComparableRule.Judge(block.Comparable, shot, launchAngle, shown, state.Setup),
            LaunchAngle = launchAngle,
            Place = place,
        };
    }

    /// <summary>The shot with its ball, in a block that compares balls; else as it is.</summary>
    private GradedShot Compared(GradedShot graded, DrillBlock block, string? named, string? due, bool? checkWasDue) =>
        block.Order is Order.Compare order && due is not null
            ? graded with { Compared = ComparedBalls.Thrown(order, state.Setup.Balls, named, due, checkWasDue == true, graded) }
            : graded;

    private static int? BallOf(BlockRun block, GradedShot graded) =>
        block.Plan.Block.Order is Order.Compare order && graded.Compared is { } thrown ? ComparedBalls.IndexOf(order, thrown) : null;

    private static BlockEndReason OrderDone(BlockRun block) =>
        block.Plan.Block.Order is Order.Compare ? BlockEndReason.Compared : BlockEndReason.WalkDone;

    /// <summary>The slots after a shot: a target that was not measured, or a throw that is left out, changes nothing.</summary>
    private static ImmutableArray<TargetSlot> Sized(BlockRun block, int aim, GradedShot graded)
    {
        var slots = block.Slots;
        if (graded.Comparability.IsComparable == false && block.Plan.Block.Comparable is { LeftOutOfSizing: true })
        {
            return slots;
        }

        var first = block.Plan.FirstSlot(aim);
        var plans = block.Plan.Block.Aims[aim].Targets;
        for (var i = 0; i < graded.Targets.Count; i++)
        {
            if (graded.Targets[i] is not { Grade: { } grade, Miss: { } miss })
            {
                continue;
            }

            var slot = slots[first + i];
            var sizing = plans[i].Sizing.After(slot.Sizing, new SizedShot(grade.Holds, miss));
            if (!ReferenceEquals(sizing, slot.Sizing))
            {
                slots = slots.SetItem(first + i, slot with { Sizing = sizing });
            }
        }

        return slots;
    }

    /// <summary>A shot whose hold is not known neither lengthens nor breaks a row.</summary>
    private static int NextHeldInARow(int inARow, bool? held) => held switch { true => inARow + 1, false => 0, null => inARow };

    /// <summary>What is shown after the shot that is thrown next, if that does not hang on what comes of it; else null.</summary>
    public Aim? Next()
    {
        if (_block is not { } block || block.Throws + 1 >= block.Plan.Block.Until.Shots || block.HeldInARow + 1 >= block.Plan.Block.Until.HitsInARow)
        {
            return null;
        }

        return AfterThrow(block, held: true) is { } held && AfterThrow(block, held: false) is { } missed
            && held.ShownAim == missed.ShownAim && held.Order.Place == missed.Order.Place ? AimOf(held) : null;
    }

    private BlockRun? AfterThrow(BlockRun block, bool held) => !block.ThrowAgain.IsEmpty
        ? block with { ThrowAgain = block.ThrowAgain.Pop() }
        : OrderRule(block).AfterThrow(block.Order, held, DueBall(block), held) is { } order ? block with { Order = order } : null;

    private static int? DueBall(BlockRun block) => block is { Plan.Block.Order: Order.Compare order, Order.Compare: { } compare }
        ? new CompareRule(order, block.Plan.Aims.Count).Due(compare).Ball : null;

    private static ValueList<NextWidth> NextWidths(BlockRun before, BlockRun block, int aim)
    {
        var first = block.Plan.FirstSlot(aim);
        var count = block.Plan.Aims[aim].Targets.Count;
        if (count == 1)
        {
            return [NextWidthOf(before.Slots[first], block.Slots[first])];
        }

        var widths = new NextWidth[count];
        for (var i = 0; i < count; i++)
        {
            widths[i] = NextWidthOf(before.Slots[first + i], block.Slots[first + i]);
        }

        return ValueList.Create<NextWidth>(widths);
    }

    /// <summary>A shot that never reached the sizing rule leaves its state as it was, and with it what that says of the shot before.</summary>
    private static NextWidth NextWidthOf(TargetSlot before, TargetSlot slot) => new(
        slot.Sizing.Width, slot.Sizing.Uncertain, slot.Sizing.LastWasGross && !ReferenceEquals(before.Sizing, slot.Sizing));

    private Told Tell(GradedShot graded, bool blockEnds)
    {
        var block = _block!;
        var told = FeedbackRule.After(block.Plan.Block.Feedback, graded, block.Throws, _past, block.ToldUpTo, blockEnds);
        if (block.Plan.Block.Feedback.When is FeedbackWhen.Summary && told.Results.Count > 0)
        {
            _block = block with { ToldUpTo = graded.Number };
        }

        return told;
    }

    /// <summary>Works out again whatever hangs on the run's shots, after one of them was voided or corrected.</summary>
    private void Recount()
    {
        var block = _block!;
        var fresh = block with { Slots = StartingSlots(block), Throws = 0, HeldInARow = 0 };
        var (shotsHere, holdsHere) = (0, 0);
        var thrownBalls = new List<(int Line, int? Ball, bool Good)>();
        foreach (var item in History.Items(_past, block.Run).Reverse())
        {
            if (item is HistoryItem.WidthSet set)
            {
                var slot = fresh.Slots[set.Slot];
                var sizing = block.Plan.PlanOfSlot(set.Slot).Sizing.SetByHand(slot.Sizing, set.Width);
                fresh = fresh with { Slots = fresh.Slots.SetItem(set.Slot, slot with { Sizing = sizing }) };
            }
            else if (item is HistoryItem.Thrown { Shot: { VoidReason: null } shot } thrown)
            {
                fresh = fresh with
                {
                    Slots = Sized(fresh, thrown.Aim, shot),
                    Throws = fresh.Throws + 1,
                    HeldInARow = NextHeldInARow(fresh.HeldInARow, shot.Held),
                };
                thrownBalls.Add((thrown.Aim, BallOf(block, shot), shot.Compared is { IsGood: true }));
                if (thrown.Visit == block.Order.Visit)
                {
                    shotsHere++;
                    holdsHere += shot.Held == true ? 1 : 0;
                }
            }
        }

        var order = block.Plan.Block.Order is Order.Compare
            ? OrderRule(block).AfterRecount(block.Order, thrownBalls)
            : OrderRule(block).AfterRecount(block.Order, shotsHere, holdsHere);
        _block = fresh with { Order = order ?? block.Order };
        GoOn(order is null ? OrderDone(block) : WhyOver(_block));
    }

    private static ImmutableArray<TargetSlot> StartingSlots(BlockRun block)
    {
        var slots = block.Slots.ToBuilder();
        for (var i = 0; i < slots.Count; i++)
        {
            var plan = block.Plan.PlanOfSlot(i);
            slots[i] = slots[i] with { Sizing = plan.Sizing.Start(plan.Width) };
        }

        return slots.ToImmutable();
    }

    private BlockEndReason? WhyOver(BlockRun block)
    {
        var until = block.Plan.Block.Until;
        if (until.HitsInARow is { } inARow && block.HeldInARow >= inARow)
        {
            return BlockEndReason.HitsInARow;
        }

        if (until.WidthReached is { } width && AllAtMost(block, width))
        {
            return BlockEndReason.WidthReached;
        }

        if (until.Shots is { } shots && block.Throws >= shots)
        {
            return BlockEndReason.Shots;
        }

        return TimeIsUp(block) ? BlockEndReason.Minutes : null;
    }

    /// <summary>Minutes are minutes of throwing: a pause that is over, or that lasts, does not count.</summary>
    private bool TimeIsUp(BlockRun block) =>
        block.Plan.Block.Until.Minutes is { } minutes && ((_pausedAt ?? at) - block.StartedAt - block.PausedFor).TotalMinutes >= minutes;

    private static bool AllAtMost(BlockRun block, BoardOffset width)
    {
        foreach (var slot in block.Slots)
        {
            if (slot.Sizing.Width > width)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Shows the next aim of the block, or ends it and enters the next, or ends the session.</summary>
    private void GoOn(BlockEndReason? why)
    {
        if (why is null)
        {
            Show();
            return;
        }

        var next = _block!.Index + 1;
        LeaveBlock(why.Value);
        if (next < state.Blocks.Count)
        {
            EnterBlock(next, 1);
        }
        else
        {
            EndSession("all blocks were thrown");
        }
    }

    private void EnterBlock(int index, int attempt)
    {
        var plan = state.Blocks[index];
        var run = _runBlocks.Count;
        var slots = ImmutableArray.CreateBuilder<TargetSlot>();
        for (var aim = 0; aim < plan.Aims.Count; aim++)
        {
            for (var i = 0; i < plan.Aims[aim].Targets.Count; i++)
            {
                var target = plan.Block.Aims[aim].Targets[i];
                slots.Add(new TargetSlot(target.Sizing.Start(target.Width), BoardOffset.Zero, plan.Aims[aim].Targets[i].Distance));
            }
        }

        var block = new BlockRun
        {
            Plan = plan,
            Run = run,
            Index = index,
            Attempt = attempt,
            StartedAt = at,
            Slots = slots.ToImmutable(),
            ToldUpTo = _lastNumber,
        };
        _block = block with { Order = OrderRule(block).Start() };
        _runBlocks = [.. _runBlocks, index];

        // A pause lasts until it is resumed; what of it lies before this block is none of its time.
        _pausedAt = _pausedAt is null ? null : at;
        _events.Add(new SessionEvent.BlockBegan(run, index, plan.Block.Name, plan.Block.Kind, attempt));
        Show();
    }

    private void LeaveBlock(BlockEndReason why)
    {
        var block = _block!;
        var thresholds = new List<TargetThreshold>();
        for (var i = 0; i < block.Slots.Length; i++)
        {
            if (block.Slots[i].Sizing.Threshold is { } threshold)
            {
                thresholds.Add(new TargetThreshold(block.Plan.PlanOfSlot(i).Name, threshold));
            }
        }

        _events.Add(new SessionEvent.BlockEnded(block.Run, block.Plan.Block.Name, why, thresholds.ToValueList())
        {
            Told = FeedbackRule.AtEnd(block.Plan.Block.Feedback, _past, block.Run, block.ToldUpTo),
        });
        _block = null;
    }

    private void EndSession(string why)
    {
        _phase = SessionPhase.Ended;
        _pausedAt = null;
        _events.Add(new SessionEvent.SessionEnded(why));
    }

    private void Show()
    {
        var block = _block!;
        if (!IsShown(block))
        {
            _block = block = block with { Shown = AimOf(block) };
        }

        _events.Add(new SessionEvent.AimShown(_lastNumber + 1, block.Shown, block.Place) { Turn = ComparedBalls.Turn(block, state.Setup.Balls) });
    }

    /// <summary>Whether what is to be shown is shown already: most shots change nothing, and a new aim for each would be waste.</summary>
    private static bool IsShown(BlockRun block)
    {
        var aim = block.ShownAim;
        if (block.Shown is not { } shown || shown.Name != block.Plan.Block.Aims[aim].Name)
        {
            return false;
        }

        for (var i = 0; i < shown.Targets.Count; i++)
        {
            if (shown.Targets[i].Target != TargetOf(block, aim, i))
            {
                return false;
            }
        }

        return true;
    }

    private static Aim AimOf(BlockRun block)
    {
        var aim = block.ShownAim;
        var plan = block.Plan.Block.Aims[aim];
        var targets = new NamedTarget[plan.Targets.Count];
        for (var i = 0; i < targets.Length; i++)
        {
            targets[i] = new NamedTarget(plan.Targets[i].Name, TargetOf(block, aim, i));
        }

        return new Aim(plan.Name, ValueList.Create<NamedTarget>(targets));
    }

    private static Target TargetOf(BlockRun block, int aim, int index)
    {
        var slot = block.Slots[block.Plan.FirstSlot(aim) + index];
        var place = block.Plan.TargetsOf(aim, block.Order.Place)[index];
        return new Target(OnLane(place.Centre + slot.Shift), slot.Sizing.Width, slot.Distance);
    }

    /// <summary>A line that the coach moved may walk against the edge of the lane: there it stays on the lane.</summary>
    private static Board OnLane(Board centre) => centre < Board.NearEdge ? Board.NearEdge : centre > Board.FarEdge ? Board.FarEdge : centre;

    private OrderRule OrderRule(BlockRun block)
    {
        var order = block.Plan.Block.Order;
        var seed = order is Order.ByChance { Seed: { } own } ? own : state.Setup.Seed;
        return new OrderRule(order, block.Plan.Aims.Count, Math.Max(1, block.Plan.WalkPlaces.Count), SeededRandom.Bits(seed, (ulong)block.Run));
    }
}
