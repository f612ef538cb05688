using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// Studies the shots at one line in two passes: the first learns how the ball usually moves and which misses are gross, the second splits each
/// shot by that. Both take the same shots in the same order; memory does not grow with their number.
/// </summary>
/// <param name="settings">Lane and noise.</param>
public sealed class LineStudy(AccuracySettings settings)
{
    private readonly SplitSetAccumulator _all = new(settings);
    private readonly SplitSetAccumulator _kept = new(settings);
    private TargetAccuracyAccumulator[] _accuracy = [];
    private RobustAccuracy[]? _robust;
    private int _gross;

    /// <summary>What the first pass found; not known before it is closed.</summary>
    public SplitSet? Set { get; private set; }

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

    /// <summary>Second pass: splits a shot.</summary>
    /// <exception cref="InvalidOperationException">The first pass is not over.</exception>
    public StudiedShot Split(ObservedShot shot)
    {
        if (Set is not { } set || _robust is not { } robust)
        {
            throw new InvalidOperationException("the first pass is not over");
        }

        var gross = new bool?[robust.Length];
        for (var i = 0; i < gross.Length; i++)
        {
            gross[i] = shot.Targets[i].Miss is { } miss ? robust[i].IsGross(miss) : null;
        }

        var split = MissSplitter.Split(shot, StraightFit.Of(shot.Shot, settings.Lane, settings.NoiseBoards), set.Plan, settings.Lane);
        var studied = new StudiedShot(split, ValueList.Create<bool?>(gross));
        if (studied.HasGross)
        {
            _gross++;
        }
        else
        {
            _kept.Add(shot);
        }

        return studied;
    }

    /// <summary>After the second pass: the same without the shots of gross misses; null when there is none.</summary>
    public SplitSet? WithoutGross() => _gross > 0 ? _kept.Result() : null;
}
