namespace AimTrainer.Domain;

/// <summary>Reads which aim comes next.</summary>
internal static class OrderReader
{
    // The largest whole number that every JSON program keeps exactly (2 to the 53rd less 1).
    private const long LargestSeed = (1L << 53) - 1;

    /// <summary>The order, or null when it is wrong; that is reported.</summary>
    public static Order? Read(ObjectReader order)
    {
        var kind = order.Word("kind", "blocked", "serial", "random", "walk", "compare");
        Order? read;
        switch (kind)
        {
            case "blocked":
                read = order.Whole("shotsEach", 1, 10_000) is { } shots ? new Order.Blocked((int)shots) : null;
                break;
            case "serial":
                read = new Order.Serial();
                break;
            case "random":
                var seed = order.OptionalWhole("seed", 0, LargestSeed);
                var longest = order.OptionalWhole("longestRun", 1, 100) ?? 2;
                read = new Order.ByChance((ulong?)seed, (int)longest);
                break;
            case "walk":
                read = Walk(order);
                break;
            case "compare":
                read = CompareReader.Read(order);
                break;
            default:
                // Which keys belong here hangs on the kind: none is called unknown before that is right.
                return null;
        }

        order.Done();
        return read;
    }

    private static Order.Walk? Walk(ObjectReader order)
    {
        var to = order.Object("to") is { } end ? PlaceReader.ReadWalkEnd(end) : null;
        var move = order.Number("moveBoards", 0.1, 20);
        WalkWhen? when = order.ExactlyOne("everyShots", "afterHolds") switch
        {
            "everyShots" => order.Whole("everyShots", 1, 1000) is { } shots ? new WalkWhen.AfterShots((int)shots) : null,
            "afterHolds" => order.Whole("afterHolds", 1, 1000) is { } holds ? new WalkWhen.AfterHolds((int)holds) : null,
            _ => null,
        };
        var atEnd = order.OptionalChoice<WalkEnd>("atEnd") ?? WalkEnd.Stop;
        return to is not null && move is { } boards && when is not null ? new Order.Walk(to, BoardOffset.FromBoards(boards), when, atEnd) : null;
    }
}
