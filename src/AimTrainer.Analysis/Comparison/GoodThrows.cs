using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Which throws at a line are the same throw and whole, and what can be adjusted for.</summary>
internal sealed class GoodThrows
{
    private readonly List<ExcludedThrow> _excluded = [];

    private GoodThrows(IReadOnlyList<OrderedThrow> throws, ComparisonSettings settings)
    {
        var place = Covariate.UsualPlace(throws.Select(one => one.Shot));
        var all = Covariate.All(place);
        IReadOnlyList<Covariate> seen = [all[0] with { Of = shot => LaunchAngles.Of(shot, settings.Lane)?.Angle.Value }, .. all.Skip(1)];
        Kept = throws;
        Leave(InGutter);
        if (settings.Limits is { } limits)
        {
            Leave(Outside(limits, seen, settings));
        }

        LeaveGross(seen, settings);
        var (used, not) = (new List<Covariate>(), new List<string>());
        foreach (var covariate in all)
        {
            var missing = Kept.Count(one => covariate.Of(one.Shot) is null);
            if (missing == Kept.Count && covariate == all[0] && Kept.Any(one => LaunchAngles.Of(one.Shot, settings.Lane) is not null))
            {
                not.Add("launch angle only worked out from a crossing, in which the ball's own hook is");
            }
            else if (missing * 100 > Kept.Count * Covariate.MostMissingPercent)
            {
                not.Add(missing == Kept.Count ? $"{covariate.Words} not measured" : $"{covariate.Words} not measured on {missing} of {Kept.Count} throws");
            }
            else
            {
                used.Add(covariate);
                Leave(one => covariate.Of(one.Shot) is null ? $"{covariate.Words} not measured, which most others have" : null);
            }
        }

        (Covariates, NotCovariates) = (used, not);
    }

    /// <summary>The good throws, in the order thrown.</summary>
    public IReadOnlyList<OrderedThrow> Kept { get; private set; }

    /// <summary>Those that are left out.</summary>
    public IReadOnlyList<ExcludedThrow> Excluded => _excluded;

    /// <summary>What every good throw has.</summary>
    public IReadOnlyList<Covariate> Covariates { get; }

    /// <summary>What not every good throw has.</summary>
    public IReadOnlyList<string> NotCovariates { get; }

    public static GoodThrows Of(IReadOnlyList<OrderedThrow> throws, ComparisonSettings settings) => new(throws, settings);

    private static string? InGutter(OrderedThrow one)
    {
        foreach (var crossing in one.Shot.Crossings)
        {
            if (IsGutter(crossing.Board))
            {
                return $"in the gutter at {crossing.Distance} ft";
            }
        }

        return one.Shot.Entry is { } entry && IsGutter(entry) ? "in the gutter at the pins"
            : one.Shot.Breakpoint is { } breakpoint && IsGutter(breakpoint.Board) ? "in the gutter" : null;
    }

    private static bool IsGutter(Board board) => board < Board.NearEdge || board > Board.FarEdge;

    private Func<OrderedThrow, string?> Outside(ComparableLimits limits, IReadOnlyList<Covariate> all, ComparisonSettings settings)
    {
        var line = settings.Targets.Count > 1 ? settings.Targets : null;
        double?[] within = [limits.LaunchAngleWithin?.Value, limits.LaydownWithin?.Boards, limits.SpeedWithin?.Value, limits.RevsWithin?.Value];
        double?[] given =
        [
            limits.Given.LaunchAngle?.Value ?? (line is null ? null : LineArithmetic.LaunchAngle(line[0], line[1], settings.Lane).Value),
            limits.Given.Laydown?.Boards ?? (line is null ? null : LineArithmetic.BoardAt(line[0], line[1], default).Boards),
            limits.Given.Speed?.Value.Value,
            limits.Given.Revs?.Value,
        ];
        var expected = all.Select((covariate, i) => given[i] ?? MedianOf(covariate)).ToArray();
        return one =>
        {
            for (var i = 0; i < all.Count; i++)
            {
                if (within[i] is not { } limit)
                {
                    continue;
                }

                if (all[i].Of(one.Shot) is not { } value)
                {
                    return $"{all[i].Words} not measured, so it cannot be told whether it was the same throw";
                }

                if (expected[i] is { } usual && Math.Abs((decimal)value - (decimal)usual) > (decimal)limit)
                {
                    return string.Create(CultureInfo.InvariantCulture, $"not the same throw: {all[i].Words} {value:0.##}, expected {usual:0.##} within {limit:0.##}");
                }
            }

            return null;
        };
    }

    private double? MedianOf(Covariate covariate)
    {
        var values = Kept.Select(one => covariate.Of(one.Shot)).OfType<double>().ToList();
        return values.Count == 0 ? null : SpreadTest.Median(values);
    }

    /// <summary>A slip shows in how the ball left; what it did after that is judged measure by measure.</summary>
    private void LeaveGross(IReadOnlyList<Covariate> all, ComparisonSettings settings)
    {
        var aim = settings.Targets.Count > 0 ? settings.Targets[0].Distance : settings.Lane.ArrowsDistance;
        IEnumerable<Covariate> judged =
        [
            .. all,
            new("aim", string.Create(CultureInfo.InvariantCulture, $"board at {aim.Value} ft"), 0.05, 2, shot => Crossings.At(shot, aim).Board?.Boards),
        ];
        var reasons = new Dictionary<int, string>();
        foreach (var covariate in judged)
        {
            var measured = Kept.Where(one => covariate.Of(one.Shot) is not null).ToList();
            if (measured.Count < ModifiedZ.FewestValues)
            {
                continue;
            }

            var medians = measured.GroupBy(one => one.Ball).ToDictionary(ball => ball.Key, ball => SpreadTest.Median(ball.Select(one => covariate.Of(one.Shot)!.Value)));
            double[] off = [.. measured.Select(one => covariate.Of(one.Shot)!.Value - medians[one.Ball])];
            for (var i = 0; i < off.Length; i++)
            {
                if (Math.Abs(off[i]) >= covariate.Gross && Math.Abs(ModifiedZ.Of(off[i], off, covariate.Grain)) > ModifiedZ.Cut)
                {
                    reasons.TryAdd(measured[i].Number, string.Create(
                        CultureInfo.InvariantCulture,
                        $"gross miss: {covariate.Words} {covariate.Of(measured[i].Shot):0.##}, usual with this ball {medians[measured[i].Ball]:0.##}"));
                }
            }
        }

        Leave(one => reasons.GetValueOrDefault(one.Number));
    }

    private void Leave(Func<OrderedThrow, string?> reason)
    {
        var kept = new List<OrderedThrow>(Kept.Count);
        foreach (var one in Kept)
        {
            if (reason(one) is { } why)
            {
                _excluded.Add(new ExcludedThrow(one.Number, one.Ball, one.Line, null, why));
            }
            else
            {
                kept.Add(one);
            }
        }

        Kept = kept;
    }
}
