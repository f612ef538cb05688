using System.Text.Json.Serialization;
using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// How far off, and how scattered, a number of misses were. All in boards; a miss is positive inside, negative outside. The
/// variable error divides by n, as is usual for motor skills, so that total² = variable² + constant².
/// </summary>
/// <remarks>
/// Nothing is estimated: these describe the shots given, however few. With few shots they say little about the bowler; the
/// relative standard error of the variable error is about 1/√(2(n - 1)): 24 % at 10 shots, 13 % at 30.
/// Source: Schmidt &amp; Lee, Motor Control and Learning, chapter "Methodology"; the formulas are the standard ones.
/// </remarks>
/// <param name="Count">How many misses, n.</param>
/// <param name="ConstantError">Bias: Σe / n, positive inside. Null when n = 0.</param>
/// <param name="VariableError">Scatter about the bias: √(Σ(e - mean)² / n), 0 or more. Null when n &lt; 2: one shot has no scatter.</param>
/// <param name="AbsoluteError">Mean size: Σ|e| / n. Mixes bias and scatter, so do not judge by it alone. Null when n = 0.</param>
/// <param name="TotalError">Root mean square: √(Σe² / n). Null when n = 0.</param>
public sealed record ErrorMeasures(
    int Count,
    [property: JsonPropertyName("constantErrorBoards")] double? ConstantError,
    [property: JsonPropertyName("variableErrorBoards")] double? VariableError,
    [property: JsonPropertyName("absoluteErrorBoards")] double? AbsoluteError,
    [property: JsonPropertyName("totalErrorBoards")] double? TotalError)
{
    /// <summary>The measures of these misses, in one pass.</summary>
    public static ErrorMeasures Of(IEnumerable<BoardOffset> misses)
    {
        var errors = new ErrorAccumulator();
        foreach (var miss in misses)
        {
            errors.Add(miss);
        }

        return errors.Result;
    }
}
