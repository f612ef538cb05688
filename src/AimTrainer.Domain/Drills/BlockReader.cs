namespace AimTrainer.Domain;

/// <summary>Reads one block of a drill.</summary>
internal static class BlockReader
{
    private const string NeverEnds = "add shots or minutes";

    /// <summary>The block, or null when anything in it that it cannot do without is wrong; that is reported.</summary>
    public static DrillBlock? Read(JsonFile file, ObjectReader block)
    {
        var before = file.ProblemCount;
        var name = block.Text("name", 80);
        var kind = block.Choice<BlockKind>("kind");
        var sizing = block.OptionalObject("sizing") is { } sizingReader ? SizingReader.Read(sizingReader) : SizingReader.Fixed;
        var aims = AimReader.ReadAll(file, block, sizing, kind);
        var order = block.Object("order") is { } orderReader ? OrderReader.Read(orderReader) : null;
        var until = Until(block, kind, order, aims);
        var feedback = FeedbackReader.Read(block, kind ?? BlockKind.Training, until.Shots);
        var comparable = block.OptionalObject("comparable") is { } limits ? ComparableReader.Read(limits) : null;
        var bands = BandsReader.Read(block);
        var showsNext = block.OptionalFlag("showsNext") ?? false;
        CheckOrder(block, order);
        CheckTestBlock(block, kind, order);
        CheckComparison(block, kind, order, aims);
        block.Done();
        if (file.ProblemCount > before || name is null || kind is null || order is null)
        {
            return null;
        }

        return new DrillBlock
        {
            Name = name,
            Kind = kind.Value,
            Aims = aims.Select(aim => aim.Plan).ToValueList(),
            Order = order,
            Until = until,
            Feedback = feedback,
            Comparable = comparable,
            Bands = bands,
            ShowsNext = showsNext,
        };
    }

    private static BlockEnd Until(ObjectReader block, BlockKind? kind, Order? order, IReadOnlyList<ReadAim> aims)
    {
        var endsItself = order is Order.Walk { When: WalkWhen.AfterShots, AtEnd: WalkEnd.Stop } or Order.Compare || kind == BlockKind.Comparison;
        var until = block.OptionalObject("until");
        if (until is null)
        {
            if (!endsItself && !block.Has("until"))
            {
                block.Report("no \"until\": this block might never end", NeverEnds);
            }

            return new BlockEnd();
        }

        var shots = until.OptionalWhole("shots", 1, 10_000_000);
        var hits = until.OptionalWhole("hitsInARow", 1, 10_000);
        var width = until.OptionalNumber("widthBoards", Target.Narrowest, Target.Widest);
        var minutes = until.OptionalNumber("minutes", 0.5, 240);
        until.Done();
        if (!endsItself && order is not null && !until.Has("shots") && !until.Has("minutes"))
        {
            until.Report("neither \"shots\" nor \"minutes\": this block might never end", NeverEnds);
        }

        var widthReached = width is { } boards ? BoardOffset.FromBoards(boards) : (BoardOffset?)null;
        if (widthReached is { } goal && aims.SelectMany(aim => aim.Targets).FirstOrDefault(target => !CanReach(target, goal)) is { } never)
        {
            until.Report(
                "widthBoards",
                $"{goal} boards, which target {FoundText.Quoted(never.Plan.Name)} never comes down to",
                "a width that every target's sizing reaches; a fixed target reaches none");
        }

        return new BlockEnd { Shots = (int?)shots, HitsInARow = (int?)hits, WidthReached = widthReached, Minutes = minutes };
    }

    private static bool CanReach(ReadTarget target, BoardOffset goal) => target.Plan.Sizing switch
    {
        FixedSizing => false,
        LadderSizing { Widths.Count: > 0 } ladder => ladder.Widths[^1] <= goal,
        var sizing => sizing.Narrowest <= goal,
    };

    private static void CheckOrder(ObjectReader block, Order? order)
    {
        var aims = block.Node.Members.FirstOrDefault(member => member.Name == "aims")?.Value.Items.Count ?? 0;
        if (order is Order.Walk && aims > 1)
        {
            block.Report("aims", $"{aims} aims in a block that walks", "exactly one aim: one target or one line");
        }

        if (order is Order.ByChance && aims == 1)
        {
            block.Report("aims", "1 aim in random order", "2 aims or more, or another order");
        }
    }

    private static void CheckTestBlock(ObjectReader block, BlockKind? kind, Order? order)
    {
        if (kind != BlockKind.Test)
        {
            return;
        }

        SizingReader.RequireFixed(block);
        if (order is Order.Walk)
        {
            block.Report("order", "a walk in a test block", "an order whose targets stay where they are: a test block measures at fixed places");
        }
    }

    private static void CheckComparison(ObjectReader block, BlockKind? kind, Order? order, IReadOnlyList<ReadAim> aims)
    {
        if (kind is { } known && order is not null && known == BlockKind.Comparison != order is Order.Compare)
        {
            block.Report(
                "order",
                known == BlockKind.Comparison ? "another order than \"compare\" in a comparison" : "the order \"compare\" in a block that is no comparison",
                "kind \"comparison\" and order \"compare\" together, or neither");
        }

        if (kind == BlockKind.Comparison)
        {
            SizingReader.RequireFixed(block);
        }

        if (order is Order.Compare { FirstTargetHeld: true } && aims.FirstOrDefault(aim => aim.Targets.Count == 1) is { } single)
        {
            single.Targets[0].Reader.Report(
                $"a single target with \"firstTargetHeld\": {FoundText.Quoted(single.Plan.Name)}",
                "a line: to choose throws by the one target that they are compared at would hide what the ball did");
        }
    }
}
