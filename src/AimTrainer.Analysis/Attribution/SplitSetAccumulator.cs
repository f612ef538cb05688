using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Works out a <see cref="SplitSet"/> while the shots at one line arrive, in memory that does not grow with their number.</summary>
/// <remarks>
/// The plan may hang on how the ball usually moves, which is known only when all shots are in: each shot is split by
/// <see cref="MissSplitter"/> afterwards, in a second pass.
/// </remarks>
/// <param name="settings">Lane and noise.</param>
public sealed class SplitSetAccumulator(AccuracySettings settings)
{
    /// <summary>From how many split shots on it is known how the ball usually moves.</summary>
    public const int FewestForUsual = 8;

    /// <summary>A usual movement of less than this, in boards, is none.</summary>
    public const double LeastMovementBoards = 0.25;

    // A plan must not change for a movement that chance makes: 99 % limits.
    private const double SureOfMovement = 0.99;
    private const string NoNoise = "the sensor's noise is not known, or an angle was reported, whose error is not that of a board";
    private const string ByPlan = "0 because the plan is made of these shots";

    private readonly Dictionary<string, int> _notSplit = new(StringComparer.Ordinal);

    // Laydown, slope, launch angle.
    private readonly CoMoments _launch = new(3);

    private ValueList<ObservedTarget>? _targets;
    private string _line = "";
    private TargetInWork[] _perTarget = [];

    // Laydown, slope, and the rest at every target, of shots measured at all of them.
    private CoMoments _joint = new(2);
    private double[] _row = [];
    private ReadingNoise _noise;
    private int _noisy;
    private int _shots;

    /// <summary>Everything that is told of the shots added so far.</summary>
    public SplitSet Result()
    {
        var (plan, why) = Plan();
        var n = _launch.Count;
        var laydown = EstimateLimits.OfSpread(Deviation(_launch, 0), n);
        var angle = EstimateLimits.OfSpread(Deviation(_launch, 2), n);
        var noise = Noise(_noise, _noisy, n);
        var slope = n < 2 ? 0 : Deviation(_launch, 1);
        var degreesASlope = slope > 0 ? Deviation(_launch, 2) / slope : 0;
        var correlation = n < 3 || slope == 0 || laydown.Value is not > 0 ? (double?)null : _launch.Covariance(0, 1) / (slope * laydown.Value.Value);
        return new SplitSet(
            _line,
            _shots,
            n,
            _notSplit.OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => new NotSplit(pair.Key, pair.Value)).ToValueList(),
            plan,
            why,
            settings.Lane.StraightDistance,
            plan is null ? BoundedEstimate.Unknown(why) : MeanPart(plan, Part.Laydown, 0),
            plan is null ? BoundedEstimate.Unknown(why) : AngleOff(plan, degreesASlope),
            laydown,
            angle,
            Without(laydown, noise?.Laydown, n),
            Without(angle, noise?.Slope * degreesASlope * degreesASlope, n),
            correlation,
            AimDistance.Of(_launch, null),
            noise is null ? null : AimDistance.Of(_launch, noise),
            _perTarget.Select((_, i) => Causes(plan, why, i)).ToValueList());
    }

    /// <summary>Adds a shot.</summary>
    /// <param name="shot">A shot at the same places as the first one.</param>
    /// <returns>Its straight line, or why there is none: for the second pass.</returns>
    /// <exception cref="ArgumentException">It was thrown at other places.</exception>
    public StraightFit Add(ObservedShot shot)
    {
        Begin(shot);
        _shots++;
        var fit = StraightFit.Of(shot.Shot, settings.Lane, settings.NoiseBoards);
        if (fit.Line is not { } line)
        {
            _notSplit[fit.Sort!] = _notSplit.GetValueOrDefault(fit.Sort!) + 1;
            return fit;
        }

        _launch.Add(line.LaydownBoard, line.BoardsAFoot, line.LaunchAngleDegrees);
        var all = true;
        for (var i = 0; i < _perTarget.Length; i++)
        {
            var target = shot.Targets[i];
            var noise = settings.NoiseBoards is { } sigma ? ReadingNoise.Of(line, target) * (sigma * sigma) : null;
            if (i == 0 && noise is { } known)
            {
                _noise += known;
                _noisy++;
            }

            if (MissSplitter.WhyNotBent(target, shot.Shot, settings.Lane) is null && target is { Board: { } board, Miss: { } miss })
            {
                var bent = board.Boards - line.BoardAt(target.Distance);
                _row[i + 2] = bent;
                _perTarget[i].Add(shot.Shot, line, miss.Boards, bent, noise);
            }
            else
            {
                all = false;
            }
        }

        if (all)
        {
            (_row[0], _row[1]) = (line.LaydownBoard, line.BoardsAFoot);
            _joint.Add(_row);
        }

        return fit;
    }

    private void Begin(ObservedShot shot)
    {
        if (_targets is null)
        {
            _targets = shot.Targets;
            _line = shot.Line;
            _perTarget = [.. shot.Targets.Select(_ => new TargetInWork())];
            _joint = new CoMoments(shot.Targets.Count + 2);
            _row = new double[shot.Targets.Count + 2];
            return;
        }

        for (var i = 0; i < Math.Max(_targets.Count, shot.Targets.Count); i++)
        {
            if (shot.Targets.Count != _targets.Count || shot.Targets[i].Centre != _targets[i].Centre || shot.Targets[i].Distance != _targets[i].Distance)
            {
                throw new ArgumentException($"a shot at {shot.Line} among shots at {_line}", nameof(shot));
            }
        }
    }

    private (LinePlan? Plan, string Why) Plan()
    {
        if (_targets is not { } targets)
        {
            return (null, "no shot");
        }

        var lane = settings.Lane;
        if (targets.Count == 1)
        {
            return _joint.Count < FewestForUsual
                ? (null, $"one target says where to, not where from: known for a line of two targets, or from {FewestForUsual} split shots on ({_joint.Count} here)")
                : (LinePlan.Single(targets[0], _joint.Mean(1), UsualAt(0), lane), "one target only, so the usual angle of these shots is taken");
        }

        var (atFirst, atLast) = (UsualAt(0), UsualAt(targets.Count - 1));
        if (atFirst != 0 || atLast != 0)
        {
            return (LinePlan.Usual(targets, atFirst, atLast, lane), "the ball does not run straight to the last target, so this reckons with how it usually moved here");
        }

        var why = targets[^1].Distance <= lane.StraightDistance ? "all targets lie in the straight part, so it is the straight line through them"
            : _joint.Count < FewestForUsual
                ? $"how the ball usually moves is known from {FewestForUsual} shots measured at every target on ({_joint.Count} here); "
                    + "until then it is the straight line through the targets"
            : "the ball moved by no more than chance beyond the straight part, so it is the straight line through the targets";
        return (LinePlan.Straight(targets, lane), why);
    }

    /// <summary>How far from straight the ball usually is at a target; 0 within the straight part, and where no movement is told from chance.</summary>
    private double UsualAt(int target)
    {
        if (_targets![target].Distance <= settings.Lane.StraightDistance || _joint.Count < FewestForUsual)
        {
            return 0;
        }

        var usual = _joint.Mean(target + 2);
        var limits = EstimateLimits.OfMean(usual, Deviation(_joint, target + 2), _joint.Count, SureOfMovement);
        return Math.Abs(usual) >= LeastMovementBoards && limits.DiffersFromZero != false ? usual : 0;
    }

    private TargetCauses Causes(LinePlan? plan, string why, int index)
    {
        var target = _targets![index];
        var work = _perTarget[index];
        var n = work.Moments.Count;
        var spread = EstimateLimits.OfSpread(Deviation(work.Moments, 2), n);
        var noise = Noise(work.Noise, work.Noisy, n);
        var shares = VarianceShares.Of(work.Moments, target.Distance.Value, null);
        var corrected = noise is null ? null : VarianceShares.Of(work.Moments, target.Distance.Value, noise);
        var few = n < VarianceShares.Fewest ? $"{n} split shots; known from {VarianceShares.Fewest} on" : null;
        return new TargetCauses(
            target.Name,
            target.Distance,
            n,
            plan is null ? BoundedEstimate.Unknown(why) : MeanPart(plan, Part.Laydown, index),
            plan is null ? BoundedEstimate.Unknown(why) : MeanPart(plan, Part.Angle, index),
            plan is null ? BoundedEstimate.Unknown(why) : MeanPart(plan, Part.Beyond, index),
            EstimateLimits.OfMean(work.Moments.Mean(2), Deviation(work.Moments, 2), n),
            spread,
            Without(spread, noise?.Rest, n),
            shares,
            shares is not null ? null : few ?? "the misses do not scatter",
            corrected,
            corrected is not null ? null : few ?? (noise is null ? NoNoise : "below measurement noise: the misses scatter no more than the readings do"),
            work.Explanations.Result());
    }

    private enum Part
    {
        Laydown,
        Angle,
        Beyond,
    }

    /// <summary>
    /// The mean of a part at a target. Under a straight plan that is the mean of something measured less a fixed number. Under a plan that is
    /// made of the shots themselves the plan varies with them, and the limits allow for that: the mean is one of a weighted sum.
    /// </summary>
    private BoundedEstimate MeanPart(LinePlan plan, Part part, int index)
    {
        var distance = _targets![index].Distance.Value;
        if (plan.Kind == PlanKind.StraightThroughTargets)
        {
            var moments = _perTarget[index].Moments;
            return part switch
            {
                Part.Laydown => Mean(moments, [1, 0, 0], plan.LaydownBoard),
                Part.Angle => Mean(moments, [0, distance, 0], plan.BoardsAFoot * distance),
                _ => Mean(moments, [0, 0, 1], plan.BeyondBoards[index]),
            };
        }

        // The plan as a weighted sum of the means: laydown of the plan = fixed + planLaydown · means, and so on.
        var size = _row.Length;
        var (planLaydown, planSlope) = (new double[size], new double[size]);
        var last = _targets.Count - 1;
        if (plan.Kind == PlanKind.UsualAngle)
        {
            planSlope[1] = 1;
            planLaydown[1] = -_targets[0].Distance.Value;
            planLaydown[2] = UsualAt(0) != 0 ? -1 : 0;
        }
        else
        {
            var (near, far) = (_targets[0].Distance.Value, _targets[last].Distance.Value);
            var perFoot = 1 / (far - near);
            var (atFirst, atLast) = (UsualAt(0) != 0 ? 1 : 0, UsualAt(last) != 0 ? 1 : 0);
            planSlope[2] += atFirst * perFoot;
            planSlope[last + 2] -= atLast * perFoot;
            planLaydown[2] -= atFirst * (1 + (perFoot * near));
            planLaydown[last + 2] += atLast * perFoot * near;
        }

        var weights = new double[size];
        for (var i = 0; i < size; i++)
        {
            weights[i] = part switch
            {
                Part.Laydown => (i == 0 ? 1 : 0) - planLaydown[i],
                Part.Angle => ((i == 1 ? 1 : 0) - planSlope[i]) * distance,
                _ => (i == index + 2 ? 1 : 0) + planLaydown[i] + (planSlope[i] * distance),
            };
        }

        var value = part switch
        {
            Part.Laydown => _joint.Mean(0) - plan.LaydownBoard,
            Part.Angle => (_joint.Mean(1) - plan.BoardsAFoot) * distance,
            _ => _joint.Mean(index + 2) - plan.BeyondBoards[index],
        };
        return Array.TrueForAll(weights, weight => Math.Abs(weight) < 1e-12)
            ? BoundedEstimate.Bare(0, ByPlan)
            : EstimateLimits.OfMean(value, _joint.Count < 2 ? 0 : Math.Sqrt(_joint.VarianceOf(weights)), _joint.Count);
    }

    private BoundedEstimate AngleOff(LinePlan plan, double degreesASlope)
    {
        if (plan.Kind == PlanKind.StraightThroughTargets)
        {
            return EstimateLimits.OfMean(_launch.Mean(2) - plan.LaunchAngleDegrees, Deviation(_launch, 2), _launch.Count);
        }

        // The angle part divided by the distance is the slope; on this small stretch degrees are proportional to it.
        var part = MeanPart(plan, Part.Angle, _targets!.Count - 1);
        return part.DiffersFromZero is null ? part : part.Times(-degreesASlope / _targets[^1].Distance.Value);
    }

    private static BoundedEstimate Mean(CoMoments moments, double[] weights, double from) =>
        EstimateLimits.OfMean(moments.MeanOf(weights) - from, moments.Count < 2 ? 0 : Math.Sqrt(moments.VarianceOf(weights)), moments.Count);

    private static double Deviation(CoMoments moments, int variable) => moments.Count < 2 ? 0 : Math.Sqrt(moments.Covariance(variable, variable));

    /// <summary>The mean noise, when it is known for every shot.</summary>
    private static ReadingNoise? Noise(ReadingNoise sum, int noisy, int shots) => noisy > 0 && noisy == shots ? sum * (1.0 / noisy) : null;

    private static BoundedEstimate Without(BoundedEstimate spread, double? variance, int shots) => spread.Value is null ? spread
        : variance is { } known ? EstimateLimits.Without(spread, known)
        : BoundedEstimate.Unknown(shots == 0 ? EstimateLimits.NoShot : NoNoise);

    private sealed class TargetInWork
    {
        /// <summary>Laydown, slope, rest.</summary>
        public CoMoments Moments { get; } = new(3);

        public ExplanationAccumulator Explanations { get; } = new();

        public ReadingNoise Noise { get; private set; }

        public int Noisy { get; private set; }

        public void Add(Shot shot, StraightLine line, double miss, double bent, ReadingNoise? noise)
        {
            Moments.Add(line.LaydownBoard, line.BoardsAFoot, bent);
            Explanations.Add(shot, miss, bent);
            if (noise is { } known)
            {
                Noise += known;
                Noisy++;
            }
        }
    }
}
