using AimTrainer.Analysis;

namespace AimTrainer.Reports;

/// <summary>A session's test, as a document has it.</summary>
/// <param name="Visit">Number of the visit, from 1.</param>
/// <param name="At">When the visit began.</param>
/// <param name="Shots">Test shots whose crossing is known.</param>
/// <param name="Targets">Targets they were thrown at.</param>
/// <param name="BiasBoards">Mean miss, positive inside.</param>
/// <param name="VariableErrorBoards">Scatter about the targets' own means, divided by the shots.</param>
/// <param name="SpreadBoards">The same divided by shots less targets.</param>
/// <param name="LogSpread">What the trend judges.</param>
/// <param name="AtResolution">Whether the readings are too coarse for so small a spread.</param>
/// <param name="TrainingBefore">Training shots before the test in that visit.</param>
public sealed record TrendPointFigures(
    int Visit, DateTimeOffset At, int Shots, int Targets, double BiasBoards, double VariableErrorBoards, double SpreadBoards, double LogSpread, bool AtResolution,
    int TrainingBefore)
{
    /// <summary>The figures of a point.</summary>
    public static TrendPointFigures Of(TestPoint point) => new(
        point.Visit.Number, point.At, point.Graded, point.Targets, point.BiasBoards, point.VariableErrorBoards, point.SpreadBoards, point.LogSpread, point.AtResolution,
        point.TrainingBefore);
}
