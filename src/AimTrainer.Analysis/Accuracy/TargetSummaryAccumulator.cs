using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Works out a <see cref="TargetSummary"/> while results arrive, keeping none of them. Adding allocates nothing.</summary>
/// <param name="name">The target's name.</param>
public sealed class TargetSummaryAccumulator(string name)
{
    private readonly ErrorAccumulator _errors = new();
    private int _shots;
    private int _graded;
    private int _hits;
    private Board _lowest;
    private Board _highest;

    /// <summary>The target's name.</summary>
    public string Name => name;

    /// <summary>The summary of all results added so far.</summary>
    public TargetSummary Result
    {
        get
        {
            var errors = _errors.Result;
            var interval = ProportionInterval.Wilson(_hits, _graded);
            return new TargetSummary(
                name,
                _shots,
                _graded,
                _hits,
                _graded == 0 ? null : (double)_hits / _graded,
                interval?.Low,
                interval?.High,
                errors.ConstantError,
                errors.VariableError,
                errors.AbsoluteError,
                errors.TotalError,
                _graded < 2 ? null : (_highest - _lowest).Boards,
                _graded == 0 ? null : _lowest,
                _graded == 0 ? null : _highest);
        }
    }

    /// <summary>Adds what one shot did at this target. A crossing that nobody measured is a shot, and nothing else.</summary>
    /// <param name="result">A result of the target of this name; its place and width may change from shot to shot.</param>
    /// <exception cref="ArgumentException">It is another target's result.</exception>
    public void Add(TargetResult result)
    {
        if (result.Name != name)
        {
            throw new ArgumentException($"a result of '{result.Name}' cannot be added to '{name}'", nameof(result));
        }

        _shots++;
        if (result is not { Crossing.Board: { } board, Miss: { } miss, Grade: { } grade })
        {
            return;
        }

        _lowest = _graded == 0 || board < _lowest ? board : _lowest;
        _highest = _graded == 0 || board > _highest ? board : _highest;
        _graded++;
        _hits += grade.Holds ? 1 : 0;
        _errors.Add(miss);
    }
}
