using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Compares balls that were thrown at the same target or line.</summary>
/// <remarks>What is worked out and how far it holds: <c>docs/comparison.md</c>.</remarks>
public static class BallComparer
{
    /// <summary>A difference is called one when chance alone makes any of all that are judged in fewer cases.</summary>
    public const double Alpha = 0.05;

    /// <summary>The name of the line when nobody names one.</summary>
    public const string OnlyLine = "the line";

    /// <summary>Compares.</summary>
    /// <param name="throws">In the order thrown; by their times where every throw has one.</param>
    /// <param name="settings">Reference ball, margins, limits.</param>
    /// <exception cref="ArgumentException">A margin is not more than 0.</exception>
    public static ComparisonReport Compare(IEnumerable<ComparedThrow> throws, ComparisonSettings settings)
    {
        if (!(settings.MarginBoards > 0 && settings.MarginDegrees > 0 && settings.MarginFeet > 0 && settings.MarginMph > 0))
        {
            throw new ArgumentException("a margin is not more than 0; allowed: more than 0", nameof(settings));
        }

        var (excluded, notices) = (new List<ExcludedThrow>(), new List<string>());
        var ordered = Ordered([.. throws], excluded, notices);
        var balls = ordered.Select(one => one.Ball).Distinct().ToList();
        var key = Spelled(settings.Reference);
        var reference = balls.Find(ball => ball.Equals(key, StringComparison.OrdinalIgnoreCase));
        var problem = Problem(ordered, balls, reference, settings.Reference);
        var (lines, places) = (new List<(LineComparison Line, GoodThrows Good)>(), new List<BallOnLine>());
        foreach (var line in ordered.GroupBy(one => one.Line))
        {
            AddDays(line, notices);
            var good = GoodThrows.Of([.. line], settings);
            excluded.AddRange(good.Excluded);
            foreach (var ball in balls.Where(ball => problem is null && ball != reference))
            {
                if (line.Any(one => one.Ball == ball))
                {
                    lines.Add((OnLine(reference!, ball, line.Key, good, settings, excluded, notices), good));
                }
            }

            var misread = excluded.Where(one => one.Measure is not null).Select(one => (one.Number, one.Measure!)).ToHashSet();
            places.AddRange(good.Kept.GroupBy(one => one.Ball).Select(ball => Place(ball.Key, line.Key, [.. ball], misread, settings)));
        }

        var overall = lines.GroupBy(line => line.Line.Ball).SelectMany(ball => OverLines(ball.Key, [.. ball.Select(line => line.Line)], settings)).ToList();
        var (judged, judgedOverall) = WithVerdicts([.. lines.Select(line => line.Line)], overall, reference ?? settings.Reference, settings);
        return new ComparisonReport(
            problem ?? (lines.Count == 0 || lines.TrueForAll(line => line.Line.Measures.Count == 0) ? NothingLeft(excluded) : null),
            reference ?? settings.Reference,
            judged.ToValueList(),
            judgedOverall.ToValueList(),
            places.OrderBy(place => place.BreakpointFeet.Value ?? double.MaxValue).ToValueList(),
            excluded.OrderBy(one => one.Number).ToValueList(),
            notices.ToValueList());
    }

    private static string NothingLeft(List<ExcludedThrow> excluded) => excluded.Count > 0
        ? $"nothing can be compared: {(excluded.Count == 1 ? "1 throw is" : $"{excluded.Count} throws are")} left out (see the reasons), "
            + "and what is left has no measure that both balls share; throw more, or widen the limits"
        : "nothing can be compared: no line was thrown with both balls, or nothing was measured with both; throw both at the same line";

    private static string? Problem(List<OrderedThrow> throws, List<string> balls, string? reference, string asked) => (throws.Count, balls.Count) switch
    {
        (0, _) => "no throw names its ball; a comparison needs a ball column with two names in it",
        _ when reference is null => $"no throw with the ball {FoundText.Quoted(asked)}; allowed: {string.Join(", ", balls)}",
        (1, _) => $"one throw only, with the ball {balls[0]}; a comparison needs throws of two balls",
        (_, 1) => $"one ball only, {balls[0]}; a comparison needs throws of two balls",
        _ => null,
    };

    private static List<OrderedThrow> Ordered(List<ComparedThrow> throws, List<ExcludedThrow> excluded, List<string> notices)
    {
        if (throws.TrueForAll(one => one.Shot.Time is not null))
        {
            throws = [.. throws.OrderBy(one => one.Shot.Time)];
        }

        var (balls, lines) = (new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase), new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase));
        var named = throws.Exists(one => one.Line is not null);
        var result = new List<OrderedThrow>(throws.Count);
        for (var i = 0; i < throws.Count; i++)
        {
            var one = throws[i];
            if (string.IsNullOrWhiteSpace(one.Ball))
            {
                excluded.Add(new ExcludedThrow(one.Number, null, one.Line, null, "nobody said with which ball"));
            }
            else if (named && string.IsNullOrWhiteSpace(one.Line))
            {
                excluded.Add(new ExcludedThrow(one.Number, one.Ball, null, null, "nobody said at which line"));
            }
            else
            {
                result.Add(new OrderedThrow(one.Number, i, one.Shot, One(balls, one.Ball, "ball", notices), named ? One(lines, one.Line!, "line", notices) : OnlyLine));
            }
        }

        return result;
    }

    private static void AddDays(IGrouping<string, OrderedThrow> line, List<string> notices)
    {
        const string notice = "the throws at a line are of more than one day; drift of the lane is taken as one straight line through all of them, so compare each day by itself";
        if (line.All(one => one.Shot.Time is not null) && line.Max(one => one.Shot.Time) - line.Min(one => one.Shot.Time) > TimeSpan.FromHours(12) && !notices.Contains(notice))
        {
            notices.Add(notice);
        }
    }

    /// <summary>The first spelling of a name that differs in capitals or blanks only.</summary>
    private static string One(Dictionary<string, string> known, string name, string what, List<string> notices)
    {
        var spelled = Spelled(name);
        if (known.TryAdd(spelled, spelled) || known[spelled] == spelled)
        {
            return known[spelled];
        }

        var notice = $"{what} {FoundText.Quoted(spelled)} is taken as {FoundText.Quoted(known[spelled])}: they differ in capital letters only";
        if (!notices.Contains(notice))
        {
            notices.Add(notice);
        }

        return known[spelled];
    }

    private static string Spelled(string name) => string.Join(' ', name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static LineComparison OnLine(
        string reference, string ball, string line, GoodThrows good, ComparisonSettings settings, List<ExcludedThrow> excluded, List<string> notices)
    {
        var throws = good.Kept.Where(one => one.Ball == reference || one.Ball == ball).ToList();
        var (measures, not, misread) = (new List<MeasureComparison>(), new List<string>(), new List<ExcludedThrow>());
        var judged = MeasureReading.Judged(settings.Lane);
        var way = MeasureReading.OnTheWay([.. throws.Select(one => one.Shot)]).ToList();
        if (way.Count > 0 && !Shared(judged[0]) && way[^1].Measure.Distance > settings.Lane.StraightDistance)
        {
            // Nobody saw the ball at the pins: the last place beyond the straight part takes its place.
            way[^1] = way[^1] with { Measure = way[^1].Measure with { Claimed = true } };
        }

        foreach (var reading in way.Concat(judged))
        {
            if (Shared(reading))
            {
                var measured = new MeasuredThrows(throws, reference, reading, good.Covariates, misread);
                misread.AddRange(measured.Misread);
                if (measured.StandsOut is { } far && ComparisonWords.StandsOut(reading.Measure, far.Throw, far.Value) is var notice && !notices.Contains(notice))
                {
                    notices.Add(notice);
                }

                excluded.AddRange(measured.Misread.Where(one => !excluded.Exists(known => known.Number == one.Number && known.Measure == one.Measure)));
                measures.Add(Compared(reading.Measure, measured, settings));
            }
            else
            {
                not.Add($"{ComparisonWords.Name(reading.Measure.Name)}: not measured with both balls");
            }
        }

        not.Add("speed loss: a shot carries the speed of one place only");
        return new LineComparison(
            ball,
            line,
            throws.Count(one => one.Ball == reference),
            throws.Count(one => one.Ball == ball),
            good.Covariates.Select(covariate => covariate.Words).ToValueList(),
            good.NotCovariates.ToValueList(),
            measures.ToValueList(),
            not.ToValueList(),
            "");

        bool Shared(MeasureReading reading) => throws.Exists(one => one.Ball == reference && reading.Of(one.Shot) is not null)
            && throws.Exists(one => one.Ball == ball && reading.Of(one.Shot) is not null);
    }

    private static MeasureComparison Compared(ComparedMeasure measure, MeasuredThrows measured, ComparisonSettings settings)
    {
        var (first, second) = (measured.Reference, measured.Ball);
        var adjusted = measured.Adjusted();
        var values = measured.AdjustedValues();
        var unadjusted = MeanDifference.Welch(first, second);
        var few = first.Length < ComparisonSettings.Fewest || second.Length < ComparisonSettings.Fewest;
        return new MeasureComparison(
            measure,
            first.Length,
            second.Length,
            unadjusted,
            adjusted,
            measured.Paired(),
            HodgesLehmann.OfTwo(first, second),
            values is { } alike ? HodgesLehmann.OfTwo(alike.Reference, alike.Ball) : null,
            Equivalence.Of(adjusted?.Difference ?? unadjusted, settings.MarginOf(measure.Unit)),
            values is { } left ? SpreadTest.Of(left.Reference, left.Ball) : SpreadTest.Of(first, second),
            measure.Claimed ? few ? ComparisonVerdict.TooFew : ComparisonVerdict.Open : ComparisonVerdict.NotJudged,
            null,
            null,
            null,
            null,
            "");
    }

    private static IEnumerable<OverallComparison> OverLines(string ball, List<LineComparison> lines, ComparisonSettings settings) =>
        lines.SelectMany(line => line.Measures).Where(found => found.Verdict == ComparisonVerdict.Open && found.Best.IsKnown)
            .GroupBy(found => found.Measure)
            .Where(same => same.Count() > 1)
            .Select(same => Over(ball, same.Key, [.. same.Select(found => found.Best)], settings));

    /// <summary>Each line counts the same; degrees of freedom by Satterthwaite; whether lines differ by weighing each with its own error.</summary>
    private static OverallComparison Over(string ball, ComparedMeasure measure, List<MeanDifference> lines, ComparisonSettings settings)
    {
        var k = lines.Count;
        var squares = lines.Select(line => line.StandardError!.Value * line.StandardError.Value).ToList();
        var sum = squares.Sum();
        var freedom = sum * sum / squares.Zip(lines, (square, line) => square * square / line.Freedom!.Value).Sum();
        var difference = MeanDifference.From(lines.Average(line => line.Difference.Value!.Value), Math.Sqrt(sum) / k, freedom);
        var weights = squares.Select(square => 1 / square).ToList();
        var weighted = weights.Zip(lines, (weight, line) => weight * line.Difference.Value!.Value).Sum() / weights.Sum();
        var apart = weights.Zip(lines, (weight, line) => weight * (line.Difference.Value!.Value - weighted) * (line.Difference.Value!.Value - weighted)).Sum();
        return new OverallComparison(
            ball,
            measure,
            k,
            difference,
            Tails.AboveFisher(apart / (k - 1), k - 1, lines.Min(line => line.Freedom!.Value)),
            Equivalence.Of(difference, settings.MarginOf(measure.Unit)),
            ComparisonVerdict.Open,
            null,
            "");
    }

    private static (IEnumerable<LineComparison> Lines, IEnumerable<OverallComparison> Overall) WithVerdicts(
        List<LineComparison> lines, List<OverallComparison> overall, string reference, ComparisonSettings settings)
    {
        // One family: whatever is judged, of all balls on all lines and over them. Spreads are a family of their own.
        var judged = lines.SelectMany(line => line.Measures).Where(found => found.Verdict == ComparisonVerdict.Open && found.Best.IsKnown).ToList();
        var holm = Holm.Adjusted([.. judged.Select(found => found.Best.P!.Value), .. overall.Select(found => found.Difference.P!.Value)]);
        var spreads = judged.Where(found => found.Spread is not null).ToList();
        var spreadHolm = Holm.Adjusted([.. spreads.Select(found => found.Spread!.P)]);
        var p = new Dictionary<MeasureComparison, double>(ReferenceEqualityComparer.Instance);
        var spreadP = new Dictionary<MeasureComparison, double>(ReferenceEqualityComparer.Instance);
        for (var i = 0; i < judged.Count; i++)
        {
            p[judged[i]] = holm[i];
        }

        for (var i = 0; i < spreads.Count; i++)
        {
            spreadP[spreads[i]] = spreadHolm[i];
        }

        var where = lines.Select(line => line.Line).Distinct().Count() > 1;
        return (
            [.. lines.Select(Line)],
            [.. overall.Select((found, i) =>
            {
                var verdict = Verdict(found.Difference, found.Equivalence, holm[judged.Count + i], settings.MarginOf(found.Measure.Unit));
                var known = found with { Verdict = verdict, HolmP = holm[judged.Count + i] };
                return known with { Sentence = ComparisonWords.Of(found.Ball, reference, known, settings.MarginOf(found.Measure.Unit)) };
            })]);

        LineComparison Line(LineComparison line)
        {
            var measures = line.Measures.Select(found =>
            {
                var margin = settings.MarginOf(found.Measure.Unit);
                var known = p.TryGetValue(found, out var own)
                    ? found with
                    {
                        Verdict = Verdict(found.Best, found.Equivalence, own, margin),
                        HolmP = own,
                        SpreadHolmP = spreadP.TryGetValue(found, out var spread) ? spread : null,
                    }
                    : found.Verdict == ComparisonVerdict.Open ? found with { Verdict = ComparisonVerdict.TooFew } : found;
                if (known.Verdict == ComparisonVerdict.Open)
                {
                    var more = ThrowsNeeded.Of(known.Best, margin, 2 / ((1.0 / known.ReferenceThrows) + (1.0 / known.BallThrows)));
                    known = known with { MoreThrows = more, MoreThrowsWhy = more is null ? $"more than {ThrowsNeeded.Most} more throws of each would be needed" : null };
                }

                return known with { Sentence = ComparisonWords.Of(line.Ball, reference, where ? $" on {line.Line}" : "", known, margin) };
            }).ToValueList();
            return line with { Measures = measures, Sentence = ComparisonWords.Sum(line.Ball, reference, line.Line, measures, settings) };
        }
    }

    private static ComparisonVerdict Verdict(MeanDifference difference, Equivalence? equivalence, double holm, double margin)
    {
        if (holm >= Alpha)
        {
            return equivalence is { Shown: true } ? ComparisonVerdict.Equal : ComparisonVerdict.Open;
        }

        return difference.Difference.Low > margin || difference.Difference.High < -margin ? ComparisonVerdict.DifferentBeyondMargin : ComparisonVerdict.Different;
    }

    private static BallOnLine Place(string ball, string line, List<OrderedThrow> throws, HashSet<(int, string)> misread, ComparisonSettings settings)
    {
        var judged = MeasureReading.Judged(settings.Lane);
        return new BallOnLine(ball, line, throws.Count, Mean(2), Mean(1), Mean(4), Mean(0), Mean(3));

        BoundedEstimate Mean(int measure)
        {
            var values = throws.Where(one => !misread.Contains((one.Number, judged[measure].Measure.Name)))
                .Select(one => judged[measure].Of(one.Shot)).OfType<double>().ToList();
            return values.Count == 0
                ? BoundedEstimate.Unknown("not measured")
                : EstimateLimits.OfMean(values.Average(), values.Count > 1 ? Math.Sqrt(MeanDifference.Variance(values)) : 0, values.Count);
        }
    }
}
