using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Works out a <see cref="BlockSummary"/> while shots arrive, keeping none of them.</summary>
public sealed class BlockSummaryAccumulator
{
    private readonly List<TargetSummaryAccumulator> _targets = [];
    private readonly Dictionary<string, TargetSummaryAccumulator> _byName = new(StringComparer.Ordinal);
    private int _points;
    private int _held;
    private int _known;

    /// <summary>The summary of all shots added so far.</summary>
    public BlockSummary Result => new(_targets.Select(target => target.Result).ToValueList(), _points, _held, _known);

    /// <summary>Adds one shot.</summary>
    /// <param name="results">How each target of the shot's aim was crossed.</param>
    public void Add(ValueList<TargetResult> results)
    {
        foreach (var result in results)
        {
            if (!_byName.TryGetValue(result.Name, out var target))
            {
                target = new TargetSummaryAccumulator(result.Name);
                _byName.Add(result.Name, target);
                _targets.Add(target);
            }

            target.Add(result);
        }

        _points += Grader.Points(results);
        if (results.Count > 0 && results.AsEnumerable().All(result => result.Grade is not null))
        {
            _known++;
            _held += Grader.Held(results) == true ? 1 : 0;
        }
    }
}
