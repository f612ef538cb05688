using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>What is said of where the misses at a line came from: on the terminal and on the console's page.</summary>
public static class CauseWords
{
    /// <summary>What is known of how the ball left, what it is held against, and how far off and scattered it was.</summary>
    public static IEnumerable<string> Of(SplitSet set)
    {
        yield return $"How the ball left is known of {set.Split} of {FigureWords.Count(set.Shots, "shot")}. "
            + $"It is taken to run straight up to {set.StraightFeet} ft; nothing beyond is read as angle.";
        foreach (var lacking in set.NotSplit)
        {
            yield return $"{FigureWords.Count(lacking.Shots, "shot")} without: {lacking.Why}.";
        }

        yield return set.Plan is not { } plan ? $"No plan: {set.PlanWhy}."
            : $"The plan: laid down on board {FigureWords.Number(plan.LaydownBoard)}, {FigureWords.Number(Math.Abs(plan.LaunchAngleDegrees))} degrees "
            + $"{(plan.LaunchAngleDegrees < 0 ? "inward" : "outward")}; {set.PlanWhy}.";
        if (set.Split == 0)
        {
            yield break;
        }

        if (set.Plan is not null)
        {
            yield return $"Off the plan on average: laydown {FigureWords.Limited(set.LaydownOffBoards)} boards (+ inside), "
                + $"angle {FigureWords.Limited(set.AngleOffDegrees)} degrees (+ too open).";
        }

        yield return $"Spread: laydown {FigureWords.Limited(set.LaydownSpreadBoards)} boards, angle {FigureWords.Limited(set.AngleSpreadDegrees)} degrees.";
        yield return $"The paths come together at {FigureWords.Limited(set.AimDistance.Feet)} ft"
            + $"{(set.AimDistance.SpreadThereBoards is { } there ? $"; spread there {FigureWords.Signless(there)} boards" : "")}.";
    }

    /// <summary>What is known of the scatter at one target: which cause is the largest, and what goes with speed and revs.</summary>
    /// <param name="target">The target.</param>
    /// <param name="beyond">Whether it lies beyond the straight part.</param>
    public static IEnumerable<string> Of(TargetCauses target, bool beyond)
    {
        var shares = target.SharesWithoutNoise ?? target.Shares;
        if (shares is null)
        {
            yield return $"Shares of the scatter not known: {target.SharesWhy}.";
        }
        else
        {
            yield return $"{Largest(shares, beyond)}{(target.SharesWithoutNoise is not null ? " Sensor noise is taken out." : "")}";
        }

        if (beyond)
        {
            yield return $"From straight the ball was {FigureWords.Limited(target.BentBoards)} boards inside here.";
        }

        foreach (var explanation in Told(target.Explanations, beyond))
        {
            var what = explanation.Explains == "miss" ? "The miss" : "The ball's movement";
            var where = explanation.SpeedAt is { } at
                ? $", speed {(at == SpeedPlace.Unknown ? "measured nobody said where" : $"at {System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(at.ToString())}")}" : "";
            var measured = $"{explanation.Shots} shots{where}";
            yield return explanation.By.AsEnumerable().Any(by => by.BoardsAUnit.DiffersFromZero == true)
                ? $"{what} goes with {string.Join(" and ", explanation.By.Select(By))} "
                    + $"({measured}; {FigureWords.Percent(explanation.ShareExplained)} of the variance; no proof of cause)."
                : $"{what} goes with neither more nor less {string.Join(" or ", explanation.By.Select(by => by.Name == "speedMph" ? "speed" : "revs"))}, "
                    + $"as far as these shots can tell ({measured}).";
        }
    }

    /// <summary>Which cause is the largest, when these shots can tell it from the others.</summary>
    private static string Largest(VarianceShares shares, bool beyond)
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
        ? $"speed, {FigureWords.Limited(by.BoardsAUnit)} boards a mph"
        : $"revs, {FigureWords.Limited(by.BoardsAUnit.Times(100))} boards per 100 rpm";
}
