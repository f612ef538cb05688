namespace AimTrainer.Domain;

/// <summary>Reads how the width of a target changes.</summary>
internal static class SizingReader
{
    private const int MostLookedBackOn = 64;

    /// <summary>The rule when a drill gives none: the width stays, and may be any that a target can have.</summary>
    public static Sizing Fixed { get; } =
        new FixedSizing { Narrowest = BoardOffset.FromBoards(Target.Narrowest), Widest = BoardOffset.FromBoards(Target.Widest) };

    /// <summary>The rule, or null when it is wrong; that is reported.</summary>
    public static Sizing? Read(ObjectReader sizing)
    {
        var kind = sizing.Word("kind", "fixed", "ladder", "staircase", "weighted", "scatter");
        if (kind is null)
        {
            // Which keys belong here hangs on the kind: none is called unknown before that is right.
            return null;
        }

        if (kind == "fixed")
        {
            sizing.Done();
            return Fixed;
        }

        var limits = Limits(sizing);
        Sizing? rule = kind switch
        {
            "ladder" => Ladder(sizing, limits),
            "staircase" => Staircase(sizing),
            "weighted" => Weighted(sizing),
            _ => Scatter(sizing),
        };
        sizing.Done();
        return rule is null || limits.Widest < limits.Narrowest ? null : rule with { Narrowest = limits.Narrowest, Widest = limits.Widest };
    }

    /// <summary>Reports a rule that adapts, in a block or target that may not have one.</summary>
    public static void RequireFixed(ObjectReader owner)
    {
        var kind = owner.Node.Members.FirstOrDefault(member => member.Name == "sizing")?.Value.Members
            .FirstOrDefault(member => member.Name == "kind");
        if (kind is { Value.Text: "ladder" or "staircase" or "weighted" or "scatter" })
        {
            owner.Report("sizing", $"{FoundText.Quoted(kind.Value.Text)} in a block that measures", "\"fixed\": a test or a comparison measures and never adapts");
        }
    }

    private static (BoardOffset Narrowest, BoardOffset Widest) Limits(ObjectReader sizing)
    {
        var narrowest = BoardOffset.FromBoards(
            sizing.OptionalNumber("narrowestBoards", Target.Narrowest, Target.Widest) ?? Sizing.DefaultNarrowest.Boards);
        var widest = BoardOffset.FromBoards(
            sizing.OptionalNumber("widestBoards", Target.Narrowest, Target.Widest) ?? Sizing.DefaultWidest.Boards);
        if (widest < narrowest)
        {
            sizing.Report(sizing.Has("widestBoards") ? "widestBoards" : "narrowestBoards", $"widest {widest}, narrowest {narrowest}", "a widest of at least the narrowest");
        }

        return (narrowest, widest);
    }

    private static LadderSizing? Ladder(ObjectReader sizing, (BoardOffset Narrowest, BoardOffset Widest) limits)
    {
        var widths = Widths(sizing, limits);
        var ofLast = sizing.Whole("ofLast", 1, MostLookedBackOn);
        var hits = sizing.Whole("hits", 1, ofLast ?? MostLookedBackOn);
        var misses = sizing.Whole("misses", 1, ofLast ?? MostLookedBackOn);
        if (widths is null || hits is not { } narrower || misses is not { } wider || ofLast is not { } last)
        {
            return null;
        }

        if (narrower + wider <= last)
        {
            sizing.Report("hits", $"{narrower} hits and {wider} misses of the last {last}", $"together more than {last}, so that both can never be reached at once");
            return null;
        }

        return new LadderSizing(widths, (int)narrower, (int)wider, (int)last);
    }

    private static ValueList<BoardOffset>? Widths(ObjectReader sizing, (BoardOffset Narrowest, BoardOffset Widest) limits)
    {
        var numbers = sizing.Numbers("widthsBoards", 2, 40, Target.Narrowest, Target.Widest);
        if (numbers is null)
        {
            return null;
        }

        var widths = new List<BoardOffset>();
        var falling = true;
        foreach (var (place, number) in numbers)
        {
            var width = BoardOffset.FromBoards(number);
            if (width < limits.Narrowest || width > limits.Widest)
            {
                sizing.Report(place, $"{width} boards", $"a width within the limits, {limits.Narrowest} to {limits.Widest} boards (widestBoards and narrowestBoards set them)");
            }

            if (widths.Count > 0 && width >= widths[^1])
            {
                falling = false;
                sizing.Report(place, $"{width} after {widths[^1]}", "widths that fall, the widest first");
            }

            widths.Add(width);
        }

        return falling && widths.Count > 0 ? widths.ToValueList() : null;
    }

    private static StaircaseSizing? Staircase(ObjectReader sizing)
    {
        var hits = sizing.Whole("hits", 1, 20);
        var misses = sizing.Whole("misses", 1, 20);
        StaircaseStep? step = sizing.ExactlyOne("stepBoards", "stepFactor") switch
        {
            "stepBoards" => sizing.Number("stepBoards", 0.1, 10) is { } boards ? new StaircaseStep.ByBoards(BoardOffset.FromBoards(boards)) : null,
            "stepFactor" => sizing.Number("stepFactor", 1.01, 4) is { } factor ? new StaircaseStep.ByFactor(factor) : null,
            _ => null,
        };
        var reversals = sizing.OptionalWhole("reversals", 2, 100) ?? 6;
        return hits is { } narrower && misses is { } wider && step is not null
            ? new StaircaseSizing((int)narrower, (int)wider, step, (int)reversals)
            : null;
    }

    private static WeightedSizing Weighted(ObjectReader sizing) =>
        new(GoalHitRate(sizing), sizing.OptionalNumber("narrowerOctaves", 0.01, 2) ?? 0.125);

    private static ScatterSizing Scatter(ObjectReader sizing) => new(
        GoalHitRate(sizing),
        sizing.OptionalNumber("keep", 0.5, 1) ?? 0.98,
        BoardOffset.FromBoards(sizing.OptionalNumber("priorSpreadBoards", 0.1, 10) ?? 1.6));

    private static double GoalHitRate(ObjectReader sizing) => sizing.OptionalNumber("goalHitRate", 0.05, 0.99) ?? 0.75;
}
