namespace AimTrainer.Domain;

/// <summary>Reads the order of a comparison of balls.</summary>
internal static class CompareReader
{
    private const int MostBalls = 6, MostThrowsEach = 100;

    /// <summary>The order, or null when it is wrong; that is reported.</summary>
    public static Order.Compare? Read(ObjectReader order)
    {
        var balls = Balls(order);
        var throwing = Throwing(order);
        var good = order.Whole("goodThrowsEach", 1, MostThrowsEach);
        var most = order.OptionalWhole("mostThrowsEach", 1, MostThrowsEach * 10);
        if (good is { } wanted && most is { } cap && cap < wanted)
        {
            order.Report("mostThrowsEach", FormattableString.Invariant($"{cap}, with {wanted} good throws wanted"), "at least goodThrowsEach");
        }

        var every = order.OptionalWhole("checkEvery", 2, 1000);
        var held = order.OptionalFlag("firstTargetHeld") ?? false;
        return balls is not null && throwing is not null && good is { } each
            ? new Order.Compare(balls, throwing, (int)each, (int)(most ?? each * 2), (int?)every, held)
            : null;
    }

    private static ValueList<string>? Balls(ObjectReader order)
    {
        var allowed = $"2 to {MostBalls} roles, \"{ChosenBall.ReferenceRole}\" first, each another: names of balls are chosen when a session starts";
        if (!order.Has("balls"))
        {
            order.Report("no \"balls\"", allowed);
        }

        var roles = order.OptionalTexts("balls", MostBalls, 40);
        if (!order.Has("balls"))
        {
            return null;
        }

        if (roles.Count < 2)
        {
            order.Report("balls", roles.Count == 1 ? "one ball only" : "no ball", allowed);
            return null;
        }

        var twice = roles.AsEnumerable().GroupBy(NameKey.Of).FirstOrDefault(same => same.Count() > 1);
        if (twice is not null)
        {
            order.Report("balls", $"{string.Join(" and ", twice.Select(FoundText.Quoted))}, the same role twice", allowed);
            return null;
        }

        if (roles[0] != ChosenBall.ReferenceRole)
        {
            order.Report("balls", $"{FoundText.Quoted(roles[0])} first", allowed);
            return null;
        }

        return roles;
    }

    private static ThrowingOrder? Throwing(ObjectReader order)
    {
        var word = order.Word("throwing", "alternate", "mirrored", "blocks");
        if (word == "blocks")
        {
            return order.Whole("throwsInARow", 1, MostThrowsEach) is { } throws ? new ThrowingOrder.Blocks((int)throws) : null;
        }

        if (word is not null && order.Has("throwsInARow"))
        {
            order.Report("throwsInARow", $"\"throwsInARow\" with throwing {FoundText.Quoted(word)}", "throwing \"blocks\", or no throwsInARow");
        }

        // Asked for, so that it is not called an unknown key as well.
        order.OptionalWhole("throwsInARow", 1, MostThrowsEach);
        return word switch
        {
            "alternate" => new ThrowingOrder.Alternate(),
            "mirrored" => new ThrowingOrder.Mirrored(),
            _ => null,
        };
    }
}
