using System.Collections.Immutable;

namespace AimTrainer.Domain;

/// <summary>Works out one step: takes the state apart, collects what happens, puts the new state together.</summary>
internal sealed class SessionStepper(SessionState state, DateTimeOffset at)
{
    private readonly List<SessionEvent> _events = [];
    private SessionState _state = state;

    public SessionStep Result() => new(_state, _events.ToValueList(), null);

    public string? Begin()
    {
        _state = _state with { Phase = SessionPhase.Throwing };
        EnterBlock(0, 1);
        return null;
    }

    public string? Pause()
    {
        _state = _state with { Phase = SessionPhase.Paused, PausedAt = at };
        _events.Add(new SessionEvent.SessionPaused());
        return null;
    }

    public string? Resume()
    {
        var paused = at - _state.PausedAt!.Value;
        var block = _state.Current!;
        _state = _state with
        {
            Phase = SessionPhase.Throwing,
            PausedAt = null,
            Current = block with { PausedFor = block.PausedFor + (paused > TimeSpan.Zero ? paused : TimeSpan.Zero) },
        };
        _events.Add(new SessionEvent.SessionResumed());
        return null;
    }

    public string? End(string why)
    {
        if (_state.Current is not null)
        {
            LeaveBlock(BlockEndReason.SessionEnded);
        }

        EndSession(string.IsNullOrWhiteSpace(why) ? "ended by hand" : why);
        return null;
    }

    public string? TakeNote(string text)
    {
        _events.Add(new SessionEvent.NoteTaken(text.Trim()));
        return null;
    }

    public string? Tick()
    {
        EndBlockIfOver();
        return null;
    }

    public string? Throw(Shot shot)
    {
        if (_state.Phase != SessionPhase.Throwing)
        {
            _events.Add(new SessionEvent.ShotSetAside(
                shot, _state.Phase == SessionPhase.Paused ? "the session was paused" : "the session had not begun"));
            return null;
        }

        var block = _state.Current!;
        var aim = block.ShownAim;
        var graded = Graded(shot, block.Shown, block.Plan.Block, block.Run, _state.LastNumber + 1, _state.Place);
        var fromOrder = block.ThrowAgain.IsEmpty;
        var order = fromOrder ? OrderRule(block).AfterThrow(block.Order, graded.Held == true) : block.Order;
        block = block with
        {
            Slots = Sized(block, aim, graded),
            Order = order ?? block.Order,
            ThrowAgain = fromOrder ? block.ThrowAgain : block.ThrowAgain.Pop(),
            Throws = block.Throws + 1,
            HeldInARow = NextHeldInARow(block.HeldInARow, graded.Held),
        };
        _state = _state with
        {
            LastNumber = graded.Number,
            Past = new History(new HistoryItem.Thrown(graded, aim), _state.Past),
            Current = block,
        };
        var why = order is null ? BlockEndReason.WalkDone : WhyOver(block);
        var told = FeedbackRule.After(
            block.Plan.Block.Feedback, History.CountedShots(_state.Past, block.Run), block.Throws, blockEnds: why is not null);
        _events.Add(new SessionEvent.ShotGraded(graded, NextWidths(block, aim), told));
        GoOn(why);
        return null;
    }

    public string? SkipAim()
    {
        var block = _state.Current!;
        _events.Add(new SessionEvent.AimSkipped(block.Shown.Name));
        var order = block.ThrowAgain.IsEmpty ? OrderRule(block).AfterSkip(block.Order) : block.Order;
        _state = _state with
        {
            Current = block with { Order = order ?? block.Order, ThrowAgain = block.ThrowAgain.IsEmpty ? block.ThrowAgain : block.ThrowAgain.Pop() },
        };
        GoOn(order is null ? BlockEndReason.WalkDone : null);
        return null;
    }

    public string? SkipBlock()
    {
        GoOn(BlockEndReason.Skipped);
        return null;
    }

    public string? RepeatAim()
    {
        var block = _state.Current!;
        if (block.Plan.Block.Order is Order.Walk)
        {
            return "a walking line stays at its place until its shots are thrown: void a shot to throw it again";
        }

        if (History.Items(_state.Past, block.Run).OfType<HistoryItem.Thrown>().FirstOrDefault() is not { } last)
        {
            return "nothing has been thrown in this block yet, so there is nothing to repeat";
        }

        _events.Add(new SessionEvent.AimRepeated(last.Shot.Aim));
        _state = _state with { Current = block with { ThrowAgain = block.ThrowAgain.Push(last.Aim) } };
        Show();
        return null;
    }

    public string? RepeatBlock()
    {
        var block = _state.Current!;
        LeaveBlock(BlockEndReason.Repeated);
        EnterBlock(block.Index, block.Attempt + 1);
        return null;
    }

    public string? Void(int number, string reason)
    {
        if (string.IsNullOrWhiteSpace(reason))
        {
            return "say why the shot does not count";
        }

        if (History.Find(_state.Past, number) is not { } thrown)
        {
            return NoSuchShot(number);
        }

        if (thrown.Shot.VoidReason is not null)
        {
            return $"shot {number} is void already: {thrown.Shot.VoidReason}";
        }

        var block = _state.Current!;
        _events.Add(new SessionEvent.ShotVoided(number, reason.Trim()));
        _state = _state with { Past = History.Replace(_state.Past!, thrown.Shot with { VoidReason = reason.Trim() }) };
        if (thrown.Shot.Run == block.Run)
        {
            if (block.Plan.Block.Order is not Order.Walk)
            {
                _state = _state with { Current = block with { ThrowAgain = block.ThrowAgain.Push(thrown.Aim) } };
            }

            Recount();
        }

        return null;
    }

    public string? Correct(int number, Shot shot)
    {
        if (History.Find(_state.Past, number) is not { } thrown)
        {
            return NoSuchShot(number);
        }

        var before = thrown.Shot;
        var shown = new Aim(before.Aim, before.Targets.AsEnumerable().Select(result => new NamedTarget(result.Name, result.Target)).ToValueList());
        var drillBlock = _state.Blocks[_state.RunBlocks[before.Run]].Block;
        var after = Graded(shot, shown, drillBlock, before.Run, number, before.Place) with { At = before.At, VoidReason = before.VoidReason };
        _events.Add(new SessionEvent.ShotCorrected(before, after));
        _state = _state with { Past = History.Replace(_state.Past!, after) };
        if (before.Run == _state.Current!.Run && after.VoidReason is null)
        {
            Recount();
        }

        return null;
    }

    public string? ChangeTarget(SessionInput.ChangeTarget change)
    {
        var block = _state.Current!;
        var index = block.Shown.Targets.AsEnumerable().ToList().FindIndex(target => target.Name == change.Target);
        if (index < 0)
        {
            var names = string.Join(", ", block.Shown.Targets.AsEnumerable().Select(target => $"\"{target.Name}\""));
            return $"no target \"{change.Target}\" is shown; shown: {names}";
        }

        var before = block.Shown.Targets[index].Target;
        var slotIndex = block.Plan.FirstSlot(block.ShownAim) + index;
        var rule = block.Plan.Block.Aims[block.ShownAim].Targets[index].Sizing;
        if (Refused(change, before, rule, block, index) is { } refusal)
        {
            return refusal;
        }

        var slot = block.Slots[slotIndex];
        var changed = slot with
        {
            Shift = slot.Shift + ((change.Centre ?? before.Centre) - before.Centre),
            Distance = change.Distance ?? slot.Distance,
            Sizing = change.Width is { } width ? rule.SetByHand(slot.Sizing, width) : slot.Sizing,
        };
        block = block with { Slots = block.Slots.SetItem(slotIndex, changed) };
        _state = _state with { Current = block };
        if (change.Width is { } set)
        {
            _state = _state with { Past = new History(new HistoryItem.WidthSet(block.Run, slotIndex, set), _state.Past) };
        }

        var after = AimOf(block).Targets[index].Target;
        _events.Add(new SessionEvent.TargetChanged(change.Target, before, after));
        Show();
        return null;
    }

    private static string? Refused(SessionInput.ChangeTarget change, Target before, Sizing rule, BlockRun block, int index)
    {
        if (change is { Width: null, Centre: null, Distance: null })
        {
            return "say what to change: width, centre or distance";
        }

        if (change.Width is { } width && (width < rule.Narrowest || width > rule.Widest))
        {
            return $"the width must lie within {rule.Narrowest} and {rule.Widest} boards in this block";
        }

        if (change.Centre is { } centre && (centre < Board.NearEdge || centre > Board.FarEdge))
        {
            return "the centre must lie on the lane, board 0.5 to 39.5";
        }

        if (change.Distance is not { } distance)
        {
            return null;
        }

        if (distance < default(Feet) || distance > LaneProfile.HeadPin)
        {
            return "the distance must lie on the lane, 0 to 60 ft";
        }

        var targets = block.Shown.Targets;
        var tooNear = index > 0 && distance <= targets[index - 1].Target.Distance;
        var tooFar = index < targets.Count - 1 && distance >= targets[index + 1].Target.Distance;
        return tooNear || tooFar ? $"the targets of a line must keep their order along the lane; this one is at {before.Distance} ft" : null;
    }

    private string NoSuchShot(int number) => _state.LastNumber == 0
        ? $"there is no shot {number}: none has been thrown"
        : $"there is no shot {number}: shots are numbered 1 to {_state.LastNumber}";

    private GradedShot Graded(Shot shot, Aim shown, DrillBlock block, int run, int number, int place)
    {
        var results = Grader.Grade(shot, shown, block.Bands);
        var launchAngle = LaunchAngles.Of(shot, _state.Setup.Lane);
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
            Comparability = ComparableRule.Judge(block.Comparable, shot, launchAngle, shown, _state.Setup),
            LaunchAngle = launchAngle,
            Place = place,
        };
    }

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

    private static ValueList<NextWidth> NextWidths(BlockRun block, int aim)
    {
        var first = block.Plan.FirstSlot(aim);
        var widths = new NextWidth[block.Plan.Aims[aim].Targets.Count];
        for (var i = 0; i < widths.Length; i++)
        {
            var sizing = block.Slots[first + i].Sizing;
            widths[i] = new NextWidth(sizing.Width, sizing.Uncertain, sizing.LastWasGross);
        }

        return ValueList.Create<NextWidth>(widths);
    }

    /// <summary>Works out again whatever hangs on the run's shots, after one of them was voided or corrected.</summary>
    private void Recount()
    {
        var block = _state.Current!;
        var fresh = block with { Slots = StartingSlots(block), Throws = 0, HeldInARow = 0 };
        var order = block.Order with { ShotsHere = 0, HoldsHere = 0 };
        foreach (var item in History.Items(_state.Past, block.Run).Reverse())
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
            }
        }

        // On its way to and fro a walk comes to a place more than once: only the shots since it came here last count here.
        foreach (var shot in History.Items(_state.Past, block.Run).OfType<HistoryItem.Thrown>().TakeWhile(item => item.Shot.Place == block.Order.Place + 1))
        {
            if (shot.Shot.VoidReason is null)
            {
                order = order with { ShotsHere = order.ShotsHere + 1, HoldsHere = order.HoldsHere + (shot.Shot.Held == true ? 1 : 0) };
            }
        }

        _state = _state with { Current = fresh with { Order = order } };
        EndBlockIfOver(showAnyway: true);
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

    private void EndBlockIfOver(bool showAnyway = false)
    {
        var why = WhyOver(_state.Current!);
        if (why is not null || showAnyway)
        {
            GoOn(why);
        }
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

        return until.Minutes is { } minutes && (at - block.StartedAt - block.PausedFor).TotalMinutes >= minutes ? BlockEndReason.Minutes : null;
    }

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

        var next = _state.Current!.Index + 1;
        LeaveBlock(why.Value);
        if (next < _state.Blocks.Count)
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
        var plan = _state.Blocks[index];
        var run = _state.RunBlocks.Count;
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
            Order = default,
            Shown = null!,
        };
        block = block with { Order = OrderRule(block).Start() };
        _events.Add(new SessionEvent.BlockBegan(run, index, plan.Block.Name, plan.Block.Kind, attempt));
        _state = _state with { Current = block, RunBlocks = [.. _state.RunBlocks, index] };
        if (_state.Phase == SessionPhase.Paused)
        {
            // Going on to another block ends a pause: its minutes start now.
            _state = _state with { Phase = SessionPhase.Throwing, PausedAt = null };
            _events.Add(new SessionEvent.SessionResumed());
        }

        Show();
    }

    private void LeaveBlock(BlockEndReason why)
    {
        var block = _state.Current!;
        var thresholds = new List<TargetThreshold>();
        for (var i = 0; i < block.Slots.Length; i++)
        {
            if (block.Slots[i].Sizing.Threshold is { } threshold)
            {
                thresholds.Add(new TargetThreshold(block.Plan.PlanOfSlot(i).Name, threshold));
            }
        }

        _events.Add(new SessionEvent.BlockEnded(block.Run, block.Plan.Block.Name, why, thresholds.ToValueList()));
        _state = _state with { Current = null };
    }

    private void EndSession(string why)
    {
        _state = _state with { Phase = SessionPhase.Ended, PausedAt = null };
        _events.Add(new SessionEvent.SessionEnded(why));
    }

    private void Show()
    {
        var block = _state.Current!;
        block = block with { Shown = AimOf(block) };
        _state = _state with { Current = block };
        _events.Add(new SessionEvent.AimShown(_state.LastNumber + 1, block.Shown, _state.Place));
    }

    private static Aim AimOf(BlockRun block)
    {
        var aim = block.ShownAim;
        var first = block.Plan.FirstSlot(aim);
        var places = block.Plan.TargetsOf(aim, block.Order.Place);
        var name = block.Plan.Block.Aims[aim].Name;
        var targets = new NamedTarget[places.Count];
        for (var i = 0; i < targets.Length; i++)
        {
            var slot = block.Slots[first + i];
            targets[i] = new NamedTarget(places[i].Name, new Target(OnLane(places[i].Centre + slot.Shift), slot.Sizing.Width, slot.Distance));
        }

        return new Aim(name, ValueList.Create<NamedTarget>(targets));
    }

    /// <summary>A line that the coach moved may walk against the edge of the lane: there it stays on the lane.</summary>
    private static Board OnLane(Board centre) => centre < Board.NearEdge ? Board.NearEdge : centre > Board.FarEdge ? Board.FarEdge : centre;

    private OrderRule OrderRule(BlockRun block)
    {
        var order = block.Plan.Block.Order;
        var seed = order is Order.ByChance { Seed: { } own } ? own : _state.Setup.Seed;
        return new OrderRule(order, block.Plan.Aims.Count, Math.Max(1, block.Plan.WalkPlaces.Count), SeededRandom.Bits(seed, (ulong)block.Run));
    }
}
