namespace AimTrainer.Analysis;

/// <summary>What one visit's test blocks say about one place: each target about its own mean, put together.</summary>
/// <param name="Visit">Which visit.</param>
/// <param name="At">When it began.</param>
/// <param name="Graded">Shots whose crossing is known.</param>
/// <param name="Targets">How many targets they were thrown at.</param>
/// <param name="BiasBoards">Mean miss, positive inside.</param>
/// <param name="VariableErrorBoards">√(Σ(miss - target's mean)² / shots).</param>
/// <param name="SpreadBoards">√(Σ(miss - target's mean)² / (shots - targets)): what is inferred about the bowler.</param>
/// <param name="LogSpread">
/// The natural logarithm of the spread plus 1 / (2 (shots - targets)): without that a session with few shots would look steadier than it was.
/// </param>
/// <param name="AtResolution">
/// Whether the readings are too coarse for so small a spread: it is then taken as that of rounding alone (step / √12).
/// </param>
/// <param name="TrainingBefore">Shots of training in the same visit before the test, by the targets thrown at.</param>
public sealed record TestPoint(
    PracticeVisit Visit,
    DateTimeOffset At,
    int Graded,
    int Targets,
    double BiasBoards,
    double VariableErrorBoards,
    double SpreadBoards,
    double LogSpread,
    bool AtResolution,
    int TrainingBefore)
{
    private const double FinestStep = 0.01;
    private const double WholeBoard = 1;

    /// <summary>Degrees of freedom of the spread.</summary>
    public int Freedom => Graded - Targets;

    /// <summary>The point that some blocks of one visit and place make; null when no target has two known crossings.</summary>
    internal static TestPoint? Of(PracticeVisit visit, IReadOnlyCollection<PracticeBlock> blocks, int trainingBefore)
    {
        var (graded, targets, sum, squares, whole) = (0, 0, 0.0, 0.0, 0);
        foreach (var target in blocks.GroupBy(block => (block.SessionId, block.Run, block.Target, block.DistanceFeet)))
        {
            var n = target.Sum(block => block.Graded);
            if (n < 2)
            {
                continue;
            }

            var misses = target.Sum(block => block.SumOfMisses);
            (graded, targets, sum) = (graded + n, targets + 1, sum + misses);
            squares += Math.Max(0, target.Sum(block => block.SumOfSquares) - (misses * misses / n));
            whole += target.Sum(block => block.WholeBoards);
        }

        if (targets == 0)
        {
            return null;
        }

        var freedom = graded - targets;
        var step = whole == graded ? WholeBoard : FinestStep;
        var variance = squares / freedom;
        var least = step * step / 12;
        return new TestPoint(
            visit,
            visit.At,
            graded,
            targets,
            sum / graded,
            Math.Sqrt(squares / graded),
            Math.Sqrt(variance),
            (Math.Log(Math.Max(variance, least)) / 2) + (1 / (2.0 * freedom)),
            variance < least,
            trainingBefore);
    }
}
