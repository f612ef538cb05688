using AimTrainer.Analysis;
using AimTrainer.Domain;
using Spectre.Console;

namespace AimTrainer.Output;

/// <summary>Where misses came from, for the person at the terminal.</summary>
internal sealed class WhyText(UserConsole console)
{
    private readonly IAnsiConsole _console = Consoles.For(console);

    /// <summary>Two decimals, or a dash; what rounds to nothing has no sign.</summary>
    public static string TwoPlaces(double? value) => Words.TwoPlaces(value is { } known ? Math.Round(known, 2) + 0.0 : null);

    /// <summary>"0.40 (-0.30 to 1.10)", or why it is not known.</summary>
    public static string Limited(BoundedEstimate estimate) => estimate switch
    {
        { Value: null } => $"not known ({estimate.Why})",
        { Low: null } => $"{TwoPlaces(estimate.Value)} (no limits: {estimate.Why})",
        _ => $"{TwoPlaces(estimate.Value)} ({TwoPlaces(estimate.Low)} to {TwoPlaces(estimate.High)})",
    };

    /// <summary>"0.40 (-0.30 to 1.10)", or a dash: for columns.</summary>
    public static string Cell(BoundedEstimate estimate) => estimate.Value is null ? "-"
        : estimate.Low is null ? TwoPlaces(estimate.Value)
        : $"{TwoPlaces(estimate.Value)} ({TwoPlaces(estimate.Low)} to {TwoPlaces(estimate.High)})";

    /// <summary>What all shots at a line have in common.</summary>
    /// <param name="heading">What the shots were thrown at.</param>
    /// <param name="set">Where their misses came from.</param>
    public void Set(string heading, SplitSet set)
    {
        Heading(heading);
        Line($"How the ball left is known of {set.Split} of {Words.Count(set.Shots, "shot")}. "
            + $"It is taken to run straight up to {set.StraightFeet} ft; nothing beyond is read as angle.");
        foreach (var lacking in set.NotSplit)
        {
            Line($"{Words.Count(lacking.Shots, "shot")} without: {lacking.Why}.");
        }

        Line(set.Plan is not { } plan ? $"No plan: {set.PlanWhy}."
            : $"The plan: laid down on board {Words.Number(plan.LaydownBoard)}, {Words.Number(Math.Abs(plan.LaunchAngleDegrees))} degrees "
            + $"{(plan.LaunchAngleDegrees < 0 ? "inward" : "outward")}; {set.PlanWhy}.");
        if (set.Split > 0)
        {
            if (set.Plan is not null)
            {
                Line($"Off the plan on average: laydown {Limited(set.LaydownOffBoards)} boards (+ inside), angle {Limited(set.AngleOffDegrees)} degrees (+ too open).");
            }

            Line($"Spread: laydown {Limited(set.LaydownSpreadBoards)} boards, angle {Limited(set.AngleSpreadDegrees)} degrees.");
            Line($"The paths come together at {Limited(set.AimDistance.Feet)} ft"
                + $"{(set.AimDistance.SpreadThereBoards is { } there ? $"; spread there {TwoPlaces(there)} boards" : "")}.");
            Targets(set);
        }
    }

    /// <summary>The same shots without those of gross misses: the figures only.</summary>
    public void Without(SplitSet set)
    {
        if (set.Split == 0)
        {
            return;
        }

        Heading("The same without the shots of gross misses");
        Targets(set);
    }

    /// <summary>A line in bold after an empty one.</summary>
    public void Heading(string text)
    {
        _console.WriteLine();
        _console.MarkupLine($"[bold]{Markup.Escape(text)}[/]");
    }

    /// <summary>A line of text.</summary>
    public void Line(string text) => _console.WriteLine(text);

    private void Targets(SplitSet set)
    {
        foreach (var target in set.Targets)
        {
            OfTarget(target, target.Distance > set.StraightFeet);
        }
    }

    private void OfTarget(TargetCauses target, bool beyond)
    {
        var shares = target.SharesWithoutNoise ?? target.Shares;
        var table = Consoles.Table(
            ($"{target.Target}, {Words.Count(target.Shots, "shot")}", ColumnKind.Name),
            ("mean miss from it", ColumnKind.Number),
            ("share of the scatter", ColumnKind.Number),
            ("square boards", ColumnKind.Number));
        Row("laydown", target.LaydownBoards, shares?.LaydownShare, shares?.LaydownVariance);
        Row("angle", target.AngleBoards, shares?.AngleShare, shares?.AngleVariance);
        if (beyond)
        {
            Row("ball, beyond the straight part", target.BeyondBoards, shares?.BeyondShare, shares?.BeyondVariance);
        }

        if (shares is not null)
        {
            Shared("laydown with angle, twice the covariance", shares.TwiceLaydownAngle);
            if (beyond)
            {
                Shared("laydown with ball, twice the covariance", shares.TwiceLaydownBeyond);
                Shared("angle with ball, twice the covariance", shares.TwiceAngleBeyond);
            }

            Shared("together", shares.MissVariance);
        }

        Line("");
        Consoles.Write(_console, table);
        if (shares is null)
        {
            Line($"Shares of the scatter not known: {target.SharesWhy}.");
        }
        else if (InWords(shares, beyond) is { } words)
        {
            Line($"{words}{(target.SharesWithoutNoise is not null ? " Sensor noise is taken out." : "")}");
        }

        if (beyond)
        {
            Line($"From straight the ball was {Limited(target.BentBoards)} boards inside here.");
        }

        foreach (var explanation in Told(target.Explanations, beyond))
        {
            var what = explanation.Explains == "miss" ? "The miss" : "The ball's movement";
            var where = explanation.SpeedAt is { } at ? $", speed {(at == SpeedPlace.Unknown ? "measured nobody said where" : $"at {Json.Word(at)}")}" : "";
            var measured = $"{explanation.Shots} shots{where}";
            Line(explanation.By.AsEnumerable().Any(by => by.BoardsAUnit.DiffersFromZero == true)
                ? $"{what} goes with {string.Join(" and ", explanation.By.Select(By))} "
                    + $"({measured}; {Words.Percent(explanation.ShareExplained)} of the variance; no proof of cause)."
                : $"{what} goes with neither more nor less {string.Join(" or ", explanation.By.Select(by => by.Name == "speedMph" ? "speed" : "revs"))}, "
                    + $"as far as these shots can tell ({measured}).");
        }

        void Row(string name, BoundedEstimate mean, BoundedEstimate? share, double? variance) => table.AddRow(
            name, Cell(mean), share is null ? "-" : $"{Words.Percent(share.Value)} ({Words.WholePercent(share.Low)} to {Words.WholePercent(share.High)})", TwoPlaces(variance));

        void Shared(string name, double variance) => table.AddRow(name, "", "", TwoPlaces(variance));
    }

    /// <summary>Which cause is the largest, when these shots can tell it from the others.</summary>
    private static string? InWords(VarianceShares shares, bool beyond)
    {
        var parts = new List<(string Name, BoundedEstimate Share)> { ("the laydown", shares.LaydownShare), ("the angle", shares.AngleShare) };
        if (beyond)
        {
            parts.Add(("the ball beyond the straight part", shares.BeyondShare));
        }

        var ordered = parts.OrderByDescending(part => part.Share.Value).ToList();
        var largest = ordered[0].Share.Low > ordered[1].Share.High
            ? $"Most of the scatter comes from {ordered[0].Name}."
            : $"These shots cannot tell which cause is the largest; it may be {ordered[0].Name}.";
        return parts.Exists(part => part.Share.Value < 0) ? $"{largest} A negative share made up for the others." : largest;
    }

    /// <summary>Both explanations together where there are enough shots for that, else each for itself.</summary>
    private static IEnumerable<Explanation> Told(ValueList<Explanation> explanations, bool beyond) => explanations.AsEnumerable()
        .Where(found => found.By.Count > 0 && (beyond || found.Explains == "miss"))
        .GroupBy(found => found.Explains)
        .SelectMany(found => found.Any(one => one.By.Count > 1) ? found.Where(one => one.By.Count > 1) : found);

    private static string By(ExplainedBy by) => by.Name == "speedMph"
        ? $"speed, {Limited(by.BoardsAUnit)} boards a mph"
        : $"revs, {Limited(by.BoardsAUnit.Times(100))} boards per 100 rpm";
}
