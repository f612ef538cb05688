using AimTrainer.Domain;
using CsCheck;

namespace AimTrainer.Analysis.Tests;

public sealed class ErrorMeasuresTests
{
    private const double Tolerance = 1e-9;

    private static readonly Gen<BoardOffset> AnyMiss = Gen.Int[-440_000, 440_000].Select(count => BoardOffset.FromBoards(count / 10_000.0));

    [Fact]
    public void Of_HandExample_IsWhatAHandFinds()
    {
        // Source: err1d.hand: crossings 9, 11, 12, 10, 13 at target 10, so errors -1, 1, 2, 0, 3; CE = 1, AE = 7/5, VE = sqrt(2),
        // E = sqrt(3); E² = VE² + CE². Formulas: Schmidt & Lee, Motor Control and Learning, ch. 2.
        var measures = ErrorMeasures.Of(Misses(10, 9, 11, 12, 10, 13));
        Assert.Equal(5, measures.Count);
        Assert.Equal(1, measures.ConstantError!.Value, Tolerance);
        Assert.Equal(1.4142135623730951, measures.VariableError!.Value, Tolerance);
        Assert.Equal(1.4, measures.AbsoluteError!.Value, Tolerance);
        Assert.Equal(1.7320508075688772, measures.TotalError!.Value, Tolerance);
    }

    [Fact]
    public void Of_TenShots_AgreesWithAnotherProgram()
    {
        // Source: ten shots at target 10, computed with SciPy 1.10.1 / NumPy 1.24.2, printed to six digits.
        var measures = ErrorMeasures.Of(Misses(10, 10.4, 9.2, 11.1, 10.8, 9.7, 12, 10.1, 8.9, 11.5, 10.3));
        Assert.Equal(0.4, measures.ConstantError!.Value, Tolerance);
        Assert.Equal(0.84, measures.AbsoluteError!.Value, Tolerance);
        Assert.Equal(0.932738, measures.VariableError!.Value, 5e-7);
        Assert.Equal(1.014889, measures.TotalError!.Value, 5e-7);
    }

    [Fact]
    public void Of_NoShot_KnowsNothing() => Assert.Equal(new ErrorMeasures(0, null, null, null, null), ErrorMeasures.Of([]));

    [Fact]
    public void Of_OneShot_HasNoScatter() =>
        Assert.Equal(new ErrorMeasures(1, -1.5, null, 1.5, 1.5), ErrorMeasures.Of(Misses(10, 8.5)));

    [Fact]
    public void Of_SameMissTwice_HasNoScatterButIsOff() =>
        Assert.Equal(new ErrorMeasures(2, 1.5, 0, 1.5, 1.5), ErrorMeasures.Of(Misses(10, 11.5, 11.5)));

    [Fact]
    public void Add_AnyMisses_AgreesWithTwoPasses() =>
        AnyMiss.Array[2, 200].Sample(misses =>
        {
            var boards = misses.Select(miss => miss.Boards).ToArray();
            var mean = boards.Average();
            var streamed = ErrorMeasures.Of(misses);
            Assert.Equal(boards.Length, streamed.Count);
            Assert.Equal(mean, streamed.ConstantError!.Value, Tolerance);
            Assert.Equal(Math.Sqrt(boards.Average(error => (error - mean) * (error - mean))), streamed.VariableError!.Value, Tolerance);
            Assert.Equal(boards.Average(Math.Abs), streamed.AbsoluteError!.Value, Tolerance);
            Assert.Equal(Math.Sqrt(boards.Average(error => error * error)), streamed.TotalError!.Value, Tolerance);
        });

    [Fact]
    public void Add_AnyMisses_TotalIsVariableAndConstant() =>
        AnyMiss.Array[2, 200].Sample(misses =>
        {
            var measures = ErrorMeasures.Of(misses);
            var (constant, variable, total) = (measures.ConstantError!.Value, measures.VariableError!.Value, measures.TotalError!.Value);
            Assert.Equal((variable * variable) + (constant * constant), total * total, Tolerance);
        });

    [Fact]
    public void Add_ToTheOtherSide_OnlyTurnsTheBias() =>
        AnyMiss.Array[2, 50].Sample(misses =>
        {
            var (inside, outside) = (ErrorMeasures.Of(misses), ErrorMeasures.Of(misses.Select(miss => -miss)));
            return outside == inside with { ConstantError = -inside.ConstantError };
        });

    [Fact]
    public void Add_MillionShotsFarOff_KeepsTheirScatter()
    {
        // 500 boards off by turns of a ten-thousandth: the scatter, exactly 0.00005, is ten million times smaller than the bias.
        var errors = new ErrorAccumulator();
        for (var i = 0; i < 500_000; i++)
        {
            errors.Add(BoardOffset.FromBoards(500));
            errors.Add(BoardOffset.FromBoards(499.9999));
        }

        Assert.Equal(1_000_000, errors.Count);
        Assert.Equal(499.99995, errors.Result.ConstantError!.Value, Tolerance);
        Assert.Equal(0.00005, errors.Result.VariableError!.Value, Tolerance);
    }

    [Fact]
    public void Add_ManyShots_AllocatesNothing()
    {
        var errors = new ErrorAccumulator();
        var miss = BoardOffset.FromBoards(1.25);
        errors.Add(miss);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 10_000; i++)
        {
            errors.Add(miss);
        }

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    private static IEnumerable<BoardOffset> Misses(double target, params double[] crossings) =>
        crossings.Select(crossing => Board.FromMeasurement(crossing) - Board.FromBoards(target));
}
