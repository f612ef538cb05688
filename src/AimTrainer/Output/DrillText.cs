using AimTrainer.Domain;
using Spectre.Console;

namespace AimTrainer.Output;

/// <summary>Drills for people to read.</summary>
internal static class DrillText
{
    public static void List(IEnumerable<(DrillScript Drill, bool Shipped)> drills, UserConsole console)
    {
        var table = Consoles.Table(("id", ColumnKind.Name), ("minutes", ColumnKind.Number), ("purpose", ColumnKind.Words));
        foreach (var (drill, shipped) in drills)
        {
            table.AddRow(new Text(shipped ? drill.Id : $"{drill.Id} (own)"), new Text($"{drill.AboutMinutes}"), new Text(drill.Purpose));
        }

        Consoles.Write(Consoles.For(console), table);
    }

    public static void Show(DrillScript drill, DrillSetting setting, TextWriter output)
    {
        output.WriteLine($"{drill.Name} ({drill.Id})");
        output.WriteLine($"Purpose: {drill.Purpose}");
        output.WriteLine($"For: {drill.WhoFor.TrimEnd('.')}. About {drill.AboutMinutes} minutes.");
        foreach (var caution in drill.Cautions)
        {
            output.WriteLine($"Take care: {caution}");
        }

        for (var i = 0; i < drill.Blocks.Count; i++)
        {
            ShowBlock(i + 1, drill.Blocks[i], setting, output);
        }
    }

    private static void ShowBlock(int number, DrillBlock block, DrillSetting setting, TextWriter output)
    {
        output.WriteLine();
        output.WriteLine($"Block {number}: {block.Name} ({Json.Word(block.Kind)}; {OrderOf(block.Order)}; until {Until(block)}; told {FeedbackOf(block.Feedback)})");
        var resolution = DrillResolver.Resolve(block, setting);
        foreach (var problem in resolution.Problems)
        {
            output.WriteLine($"  not placed: {problem}");
        }

        for (var i = 0; i < resolution.Aims.Count; i++)
        {
            var aim = resolution.Aims[i];
            for (var j = 0; j < aim.Targets.Count; j++)
            {
                var plan = block.Aims[i].Targets[j];
                var width = plan.Sizing.Start(plan.Width).Width;
                var target = new Target(aim.Targets[j].Centre, width, aim.Targets[j].Distance);
                output.WriteLine($"  {LaneStrip.Draw(target, null, false, setting.Hand)} {aim.Targets[j].Name}: {Words.Target(target)}; {SizingOf(plan.Sizing)}");
            }
        }

        if (resolution.WalkPlaces.Count > 1)
        {
            var places = string.Join(", ", resolution.WalkPlaces.AsEnumerable().Select(place => string.Join('/', place.Targets.AsEnumerable().Select(target => target.Centre))));
            output.WriteLine($"  walks over {resolution.WalkPlaces.Count} places: {places}");
        }
    }

    private static string OrderOf(Order order) => order switch
    {
        Order.Blocked blocked => $"{blocked.ShotsEach} shots at each in turn",
        Order.Serial => "one shot at each in turn",
        Order.ByChance chance => $"by chance, at most {chance.LongestRun} in a row",
        Order.Walk { When: WalkWhen.AfterShots after } walk => $"moves {Words.Boards(walk.Move)} every {(after.Shots == 1 ? "shot" : $"{after.Shots} shots")}",
        Order.Walk { When: WalkWhen.AfterHolds after } walk => $"moves {Words.Boards(walk.Move)} after {Words.Count(after.Holds, "hold")}",
        Order.Compare compare => $"{string.Join(", ", compare.Balls)}: {ThrowingOf(compare.Throwing)}; {Words.Count(compare.GoodThrows, "good throw")} of each at each line, "
            + $"at most {compare.MostThrows}{(compare.FirstTargetHeld ? "; good only through the first target" : "")}"
            + $"{(compare.CheckEvery is { } every ? $"; every {every} shots the reference ball checks the lane" : "")}",
        _ => throw new ArgumentOutOfRangeException(nameof(order)),
    };

    private static string ThrowingOf(ThrowingOrder throwing) => throwing switch
    {
        ThrowingOrder.Alternate => "one throw with each in turn",
        ThrowingOrder.Mirrored => "there and back, as A B B A",
        ThrowingOrder.Blocks blocks => $"{Words.Count(blocks.Throws, "throw")} with one, then with the next",
        _ => throw new ArgumentOutOfRangeException(nameof(throwing)),
    };

    private static string Until(DrillBlock block)
    {
        var until = block.Until;
        string?[] ways =
        [
            until.Shots is { } shots ? $"{shots} shots" : null,
            until.HitsInARow is { } hits ? $"{hits} held in a row" : null,
            until.WidthReached is { } width ? $"{width} boards wide" : null,
            until.Minutes is { } minutes ? $"{Words.Number(minutes)} minutes" : null,
            block.Order is Order.Walk { AtEnd: WalkEnd.Stop } ? "the end of the walk" : null,
            block.Order is Order.Compare ? "every ball has its throws at every line" : null,
        ];
        return string.Join(" or ", ways.Where(way => way is not null));
    }

    private static string FeedbackOf(Feedback feedback)
    {
        var says = feedback.Says switch { FeedbackSays.Hit => "hit or miss", FeedbackSays.Side => "hit or miss and side", _ => "side and boards" };
        return feedback.When switch
        {
            FeedbackWhen.Every => $"{says} after every shot",
            FeedbackWhen.Fading fading => $"{says} after a falling share of the shots, {Words.Percent(fading.FirstShare)} to {Words.Percent(fading.LastShare)}",
            FeedbackWhen.Outside => $"{says} when not held",
            FeedbackWhen.Summary summary => $"{says} after every {summary.Shots} shots",
            FeedbackWhen.None => "nothing",
            _ => throw new ArgumentOutOfRangeException(nameof(feedback)),
        };
    }

    private static string SizingOf(Sizing sizing) => sizing switch
    {
        FixedSizing => "fixed",
        LadderSizing ladder => $"ladder {string.Join(", ", ladder.Widths)}: "
            + $"narrower after {ladder.HitsToNarrow}, wider after {ladder.MissesToWiden} misses of the last {ladder.OfLast}",
        StaircaseSizing stairs => $"staircase: {stairs.HitsToNarrow} hits in a row narrower, {stairs.MissesToWiden} misses in a row wider",
        WeightedSizing weighted => $"weighted: held {Words.Percent(weighted.GoalHitRate)} in the long run",
        ScatterSizing scatter => $"scatter: held {Words.Percent(scatter.GoalHitRate)} by the bowler's own scatter",
        _ => sizing.GetType().Name,
    };
}
