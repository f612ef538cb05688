using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// Studies the shots at one line in passes over the same shots in the same order; memory does not grow with their number. The first learns how
/// the ball usually moves and which misses are gross. Where there are gross ones a second learns the plan anew without their shots, so that one
/// misread does not move what all others are held against. The last splits each shot.
/// </summary>
/// <param name="settings">Lane and noise.</param>
public sealed class LineStudy(AccuracySettings settings)
{
    private readonly SplitSetAccumulator _all = new(settings);
    private TargetAccuracyAccumulator[] _accuracy = [];
    private RobustAccuracy[]? _robust;
    private SplitSet? _kept;

    /// <summary>What the first pass found; not known before it is closed.</summary>
    public SplitSet? Set { get; private set; }

    /// <summary>The same without the shots of gross misses; null when there is none, or when they were not set aside.</summary>
    public SplitSet? WithoutGross => _kept;

    /// <summary>What shots are held against: the plan without gross misses where they were set aside, else that of all shots.</summary>
    public LinePlan? Plan => (_kept ?? Set)?.Plan;

    /// <summary>Whether any miss is gross: then <see cref="SetAsideGross"/> is to be called.</summary>
    /// <exception cref="InvalidOperationException">The first pass is not over.</exception>
    public bool HasGross => Array.Exists(Robust, target => target.GrossMisses > 0);

    private RobustAccuracy[] Robust => _robust ?? throw new InvalidOperationException("the first pass is not over");

    /// <summary>First pass: takes a shot.</summary>
    /// <exception cref="InvalidOperationException">The first pass is over.</exception>
    public void Add(ObservedShot shot)
    {
        if (Set is not null)
        {
            throw new InvalidOperationException("the first pass is over");
        }

        if (_accuracy.Length == 0)
        {
            _accuracy = [.. shot.Targets.Select(target => new TargetAccuracyAccumulator(target.Name, settings))];
        }

        _all.Add(shot);
        for (var i = 0; i < _accuracy.Length; i++)
        {
            _accuracy[i].Add(shot.Targets[i]);
        }
    }

    /// <summary>Ends the first pass.</summary>
    public SplitSet Close()
    {
        _robust ??= [.. _accuracy.Select(target => target.Result.Robust)];
        return Set ??= _all.Result();
    }

    /// <summary>Second pass, where there are gross misses: learns the plan without their shots.</summary>
    /// <param name="again">The same shots.</param>
    /// <exception cref="InvalidOperationException">The first pass is not over.</exception>
    public void SetAsideGross(IEnumerable<ObservedShot> again)
    {
        if (!HasGross)
        {
            return;
        }

        var kept = new SplitSetAccumulator(settings);
        foreach (var shot in again)
        {
            if (!GrossOf(shot).AsSpan().Contains(true))
            {
                kept.Add(shot);
            }
        }

        _kept = kept.Result();
    }

    /// <summary>Last pass: splits a shot.</summary>
    /// <exception cref="InvalidOperationException">The first pass is not over.</exception>
    public StudiedShot Split(ObservedShot shot) => new(
        MissSplitter.Split(shot, StraightFit.Of(shot.Shot, settings.Lane, settings.NoiseBoards), Plan, settings.Lane), GrossOf(shot));

    private ValueList<bool?> GrossOf(ObservedShot shot)
    {
        var gross = new bool?[Robust.Length];
        for (var i = 0; i < gross.Length; i++)
        {
            gross[i] = shot.Targets[i].Miss is { } miss ? Robust[i].IsGross(miss) : null;
        }

        return ValueList.Create<bool?>(gross);
    }
}
