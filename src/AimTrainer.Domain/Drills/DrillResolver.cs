namespace AimTrainer.Domain;

/// <summary>Works out where a drill's targets are for a bowler on a lane.</summary>
public static class DrillResolver
{
    /// <summary>Where one target is at the start.</summary>
    public static Resolution Resolve(TargetPlan plan, DrillSetting setting) => Place(plan.Place, setting) switch
    {
        (_, { } problem) => Unresolved(plan, problem),
        ({ } at, _) when !OnLane(at.Board) => Unresolved(
            plan, $"its centre would be board {at.Board}, which is off the lane: keep it between {Board.NearEdge} and {Board.FarEdge}"),
        ({ } at, _) when at.Distance.Value < 0 || at.Distance > LaneProfile.HeadPin =>
            Unresolved(plan, $"it would lie at {at.Distance} ft: keep it between 0 and {LaneProfile.HeadPin} ft"),
        ({ } at, _) => new Resolution(new ResolvedTarget(plan.Name, at.Board, at.Distance), null),
        _ => throw new InvalidOperationException("a place is either found or a problem"),
    };

    /// <summary>Where everything in a block is, and for a walk every place it comes to.</summary>
    public static BlockResolution Resolve(DrillBlock block, DrillSetting setting)
    {
        var problems = new List<string>();
        var aims = block.Aims.Select(aim => Resolve(aim, setting, problems)).ToList();
        var places = new List<ResolvedAim>();
        if (problems.Count == 0 && block.Order is Order.Walk walk)
        {
            Walk(walk, block.Aims[0], aims[0], setting, places, problems);
        }

        return problems.Count > 0
            ? new BlockResolution([], [], problems.ToValueList())
            : new BlockResolution(aims.ToValueList(), places.ToValueList(), []);
    }

    private static ResolvedAim Resolve(AimPlan aim, DrillSetting setting, List<string> problems)
    {
        var targets = new List<ResolvedTarget>();
        foreach (var plan in aim.Targets)
        {
            var resolution = Resolve(plan, setting);
            if (resolution.Target is not { } target)
            {
                problems.Add(resolution.Problem!);
                continue;
            }

            if (targets.Count > 0 && target.Distance <= targets[^1].Distance)
            {
                problems.Add(
                    $"line \"{aim.Name}\": target \"{target.Name}\" lies at {target.Distance} ft, not beyond \"{targets[^1].Name}\" at {targets[^1].Distance} ft: "
                    + "the targets of a line lie at different distances, the nearest first");
            }

            targets.Add(target);
        }

        return new ResolvedAim(aim.Name, targets.ToValueList());
    }

    private static void Walk(
        Order.Walk walk, AimPlan plan, ResolvedAim start, DrillSetting setting, List<ResolvedAim> places, List<string> problems)
    {
        var (to, problem) = Place(walk.To, setting);
        if (to is not { } end)
        {
            problems.Add($"the end of the walk: {problem}");
            return;
        }

        var wholeWay = end.Board - start.Targets[0].Centre;
        var step = wholeWay < BoardOffset.Zero ? -walk.Move : walk.Move;
        for (var offset = BoardOffset.Zero; ; offset += step)
        {
            // The last step may be shorter: the walk ends exactly where the drill says.
            var reached = offset.Abs() >= wholeWay.Abs();
            var moved = reached ? wholeWay : offset;
            var targets = start.Targets.Select((target, i) => target with { Centre = target.Centre + moved.Times(plan.Targets[i].WalkRatio) }).ToValueList();
            if (targets.FirstOrDefault(target => !OnLane(target.Centre)) is { } off)
            {
                problems.Add(
                    $"target \"{off.Name}\" would walk off the lane, to board {off.Centre}: end the walk earlier, or give the target another walkRatio");
                return;
            }

            places.Add(start with { Targets = targets });
            if (reached)
            {
                return;
            }
        }
    }

    private static (Crossing? At, string? Problem) Place(TargetPlace place, DrillSetting setting) => place switch
    {
        TargetPlace.AtBoard at => (new Crossing(at.Distance, at.Board), null),
        TargetPlace.AtMark at => Mark(at, setting),
        TargetPlace.AtBreakpoint at => Breakpoint(at, setting),
        TargetPlace.AtPatternExit at => PatternExit(at, setting),
        _ => throw new ArgumentException($"no rule for a place of type {place.GetType().Name}", nameof(place)),
    };

    private static (Crossing? At, string? Problem) Mark(TargetPlace.AtMark at, DrillSetting setting)
    {
        var lane = setting.Lane;
        if (lane.Find(at.Kind, at.Number, setting.Hand) is not { } marker)
        {
            var kind = at.Kind.ToString().ToLowerInvariant();
            var has = lane.Markers.AsEnumerable().Count(mark => mark.Kind == at.Kind);
            return (null, FormattableString.Invariant($"lane \"{lane.Name}\" has no {kind} {at.Number} (it has {has}): choose another mark, or add it to the lane profile"));
        }

        // The arrows are staggered; "at the arrows" is one distance all the same.
        var distance = at.Kind == MarkerKind.Arrow ? lane.ArrowsDistance : marker.Distance;
        return (new Crossing(distance, LaneProfile.BoardFor(marker, setting.Hand) + at.Plus), null);
    }

    private static (Crossing? At, string? Problem) Breakpoint(TargetPlace.AtBreakpoint at, DrillSetting setting) => setting.Breakpoint switch
    {
        { Distance: { } distance } recorded => (new Crossing(distance, recorded.Board + at.Plus), null),
        _ when at.Otherwise is { } otherwise => (otherwise, null),
        { } => (null, "this drill aims at the bowler's recorded breakpoint, and the one recorded has no distance: log one with its distance, or give \"otherwise\""),
        null => (null, "this drill aims at the bowler's recorded breakpoint and none is recorded: log one, or give \"otherwise\""),
    };

    private static (Crossing? At, string? Problem) PatternExit(TargetPlace.AtPatternExit at, DrillSetting setting)
    {
        if ((at.PatternLength ?? setting.PatternLength) is not { } length)
        {
            return (null, "this drill aims at the exit of the oil pattern and its length is not known: give the session's pattern length, or \"patternFeet\" in the drill");
        }

        if (length.Value is < PatternLength.Shortest or > PatternLength.Longest)
        {
            return (null, FormattableString.Invariant($"a pattern of {length} ft has no exit board: give a length of {PatternLength.Shortest} to {PatternLength.Longest} ft"));
        }

        var exit = LineArithmetic.ExitOfPattern(length);
        return (exit with { Board = exit.Board + at.Plus }, null);
    }

    private static bool OnLane(Board board) => board >= Board.NearEdge && board <= Board.FarEdge;

    private static Resolution Unresolved(TargetPlan plan, string problem) => new(null, $"target \"{plan.Name}\": {problem}");
}
