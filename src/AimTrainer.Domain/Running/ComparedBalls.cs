namespace AimTrainer.Domain;

/// <summary>The balls of a comparison: which were chosen, which is due, which was thrown.</summary>
internal static class ComparedBalls
{
    /// <summary>Everything that is wrong with the balls that were chosen for a drill.</summary>
    public static IEnumerable<string> Problems(DrillScript drill, ValueList<ChosenBall> chosen)
    {
        var roles = drill.Blocks.Select(block => block.Order).OfType<Order.Compare>().SelectMany(order => order.Balls).Distinct().ToList();
        foreach (var ball in chosen.AsEnumerable().Where(ball => !roles.Contains(ball.Role)))
        {
            yield return roles.Count == 0
                ? $"ball \"{ball.Name}\" was chosen as \"{ball.Role}\", and this drill compares no balls: leave it out, or choose a drill that compares"
                : $"ball \"{ball.Name}\" was chosen as \"{ball.Role}\", which this drill does not know: it compares {string.Join(", ", roles)}";
        }

        var unnamed = roles.Where(role => !chosen.AsEnumerable().Any(ball => ball.Role == role && !string.IsNullOrWhiteSpace(ball.Name))).ToList();
        if (unnamed.Count > 0)
        {
            yield return $"this drill compares balls, and no ball is chosen for {string.Join(", ", unnamed.Select(role => $"\"{role}\""))}: "
                + $"name a ball for each of {string.Join(", ", roles)}";
        }

        foreach (var role in chosen.AsEnumerable().GroupBy(ball => ball.Role).Where(role => role.Count() > 1))
        {
            yield return $"two balls were chosen as \"{role.Key}\": choose one";
        }

        foreach (var same in chosen.AsEnumerable().Where(ball => !string.IsNullOrWhiteSpace(ball.Name)).DistinctBy(ball => ball.Role)
            .GroupBy(ball => NameKey.Of(ball.Name)).Where(balls => balls.Count() > 1))
        {
            yield return $"{string.Join(" and ", same.Select(ball => $"\"{ball.Role}\""))} are the same ball, \"{same.First().Name}\" "
                + "(capitals and blanks make no other): choose different balls, two make a comparison";
        }
    }

    /// <summary>Which ball of a block is due; null when it compares none.</summary>
    public static BallTurn? Turn(BlockRun block, ValueList<ChosenBall> chosen)
    {
        if (block is not { Plan.Block.Order: Order.Compare order, Order.Compare: { } state })
        {
            return null;
        }

        var lines = block.Plan.Aims.Count;
        var rule = new CompareRule(order, lines);
        var (due, isCheck) = rule.Due(state);
        var balls = new BallCell[order.Balls.Count];
        for (var i = 0; i < balls.Length; i++)
        {
            var cell = rule.Cell(state, i);
            balls[i] = new BallCell(order.Balls[i], NameOf(order.Balls[i], chosen), cell.Good, order.GoodThrows, cell.Throws, order.MostThrows);
        }

        return new BallTurn
        {
            Due = new ChosenBall(balls[due].Role, balls[due].Ball),
            IsCheck = isCheck,
            Line = state.Line + 1,
            Lines = lines,
            Balls = ValueList.Create<BallCell>(balls),
        };
    }

    /// <summary>With which ball a shot was thrown.</summary>
    /// <param name="order">The comparison.</param>
    /// <param name="chosen">Its balls.</param>
    /// <param name="named">The ball that the shot names; null takes it for the one that was due.</param>
    /// <param name="due">The ball that was due.</param>
    /// <param name="checkWasDue">Whether the check was due.</param>
    /// <param name="graded">The shot, graded.</param>
    public static ThrownBall Thrown(Order.Compare order, ValueList<ChosenBall> chosen, string? named, string due, bool checkWasDue, GradedShot graded)
    {
        var key = string.IsNullOrWhiteSpace(named) ? null : NameKey.Of(named);
        var known = chosen.AsEnumerable().FirstOrDefault(ball => order.Balls.Contains(ball.Role) && NameKey.Of(ball.Name) == (key ?? NameKey.Of(due)));
        var thrown = new ThrownBall
        {
            Due = due,
            Ball = known?.Name ?? named!.Trim(),
            Role = known?.Role,
            IsNamed = key is not null,
            CheckWasDue = checkWasDue,
        };
        return thrown with { NotGood = WhyNotGood(order, thrown, graded) };
    }

    /// <summary>The place of a thrown ball in the drill's order, from 0; null when it is none of those compared.</summary>
    public static int? IndexOf(Order.Compare order, ThrownBall thrown)
    {
        for (var i = 0; i < order.Balls.Count; i++)
        {
            if (order.Balls[i] == thrown.Role)
            {
                return i;
            }
        }

        return null;
    }

    private static string NameOf(string role, ValueList<ChosenBall> chosen) => chosen.First(ball => ball.Role == role).Name;

    private static string? WhyNotGood(Order.Compare order, ThrownBall thrown, GradedShot graded)
    {
        if (thrown.Role is null)
        {
            return $"{thrown.Ball} is none of the balls compared";
        }

        if (graded.Targets.FirstOrDefault(target => target.Crossing.Board is null) is { } unseen)
        {
            return $"{unseen.Name} not measured, so where this ball goes is not known";
        }

        if (order.FirstTargetHeld && graded.Targets[0] is { Grade: not { Holds: true } } first)
        {
            return $"{first.Name} missed, so it was thrown along another line";
        }

        return graded.Comparability.IsComparable == true
            ? null
            : $"{(graded.Comparability.IsComparable == false ? "not the same throw" : "not known to be the same throw")}: {string.Join("; ", graded.Comparability.Reasons)}";
    }
}
