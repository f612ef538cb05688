using System.Collections.Concurrent;
using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

public sealed class LaneFitTests(ITestOutputHelper output)
{
    private static readonly LaneSurface _sheet = InventedLane.House();

    [Fact]
    public void Fit_ThreeHundredLanes_HoldsTheTruthWithinItsLimitsInAtLeast93OfAHundred()
    {
        const int Lanes = 300;
        var inside = new ConcurrentBag<(LaneParameter Parameter, bool Inside, double Half)>();
        Parallel.For(0, Lanes, i =>
        {
            var lane = new FittedLane((ulong)i + 1000);
            var fit = LaneFit.Fit(_sheet, Ball.Usual, lane.Shots(12), new FitSettings(), TestContext.Current.CancellationToken);
            foreach (var parameter in fit.Parameters)
            {
                var truth = lane.Numbers[parameter.Parameter];
                inside.Add((parameter.Parameter, !(truth < parameter.Low) && !(truth > parameter.High), ((parameter.High - parameter.Low) / 2) ?? double.NaN));
            }
        });

        foreach (var parameter in Enum.GetValues<LaneParameter>())
        {
            var of = inside.Where(one => one.Parameter == parameter).ToList();
            output.WriteLine($"{parameter}: {of.Count(one => one.Inside)} of {of.Count}, usual half width {of.Select(one => one.Half).Order().ElementAt(of.Count / 2):g3}");
            Assert.InRange(of.Count(one => one.Inside) / (double)Lanes, 0.93, 0.985);
        }
    }

    [Fact]
    public void Fit_WithoutNoise_FindsTheNumbersThemselves()
    {
        var lane = new FittedLane(7) { Noise = 0 };
        var fit = LaneFit.Fit(_sheet, Ball.Usual, lane.Shots(8), new FitSettings { NoiseBoards = 0.01 }, TestContext.Current.CancellationToken);

        Assert.InRange(fit.Numbers.OilFriction - lane.Numbers.OilFriction, -2e-4, 2e-4);
        Assert.InRange(fit.Numbers.DryFriction - lane.Numbers.DryFriction, -2e-3, 2e-3);
        Assert.InRange(fit.Numbers.PatternFeet - lane.Numbers.PatternFeet, -0.1, 0.1);
        Assert.True(fit.Tells);
    }

    [Fact]
    public void Fit_SpeedAtThePinsAndNoisyRevs_StillHoldsTheTruth()
    {
        var lane = new FittedLane(8) { SpeedPlace = SpeedPlace.Pins, RevsNoise = 10, Hand = Hand.Left };
        var fit = LaneFit.Fit(_sheet, Ball.Usual, lane.Shots(25), new FitSettings(), TestContext.Current.CancellationToken);

        // Wider than 95 %, so that the one seed here is no matter of luck.
        Assert.All(fit.Parameters, one => Assert.InRange(
            lane.Numbers[one.Parameter],
            one.Value - (1.6 * (one.Value - one.Low!.Value)),
            one.Value + (1.6 * (one.High!.Value - one.Value))));
    }

    [Fact]
    public void Fit_NoCrossingBeyondTheOil_SaysThatDryBoardsCannotBeTold()
    {
        var lane = new FittedLane(9) { Feet = [0, 8, 15, 25, 34] };
        var fit = LaneFit.Fit(_sheet, Ball.Usual, lane.Shots(10), new FitSettings(), TestContext.Current.CancellationToken);

        Assert.False(fit.Tells);
        Assert.Contains("farthest crossing is at 34 ft", fit.Parameters[(int)LaneParameter.DryFriction].CannotTell, StringComparison.Ordinal);
        Assert.Null(LaneFit.Fit(_sheet, Ball.Usual, lane.Shots(10), new FitSettings { Keep = [LaneParameter.DryFriction, LaneParameter.PatternFeet] }, TestContext.Current.CancellationToken)
            .Parameters[(int)LaneParameter.DryFriction].CannotTell);
    }

    [Fact]
    public void Fit_EveryShotOnOneLine_SaysSo()
    {
        var lane = new FittedLane(10) { SpreadOfLines = 0.05, Feet = [0, 15, 42] };
        var fit = LaneFit.Fit(_sheet, Ball.Usual, lane.Shots(6), new FitSettings { Keep = [LaneParameter.PatternFeet] }, TestContext.Current.CancellationToken);

        Assert.False(fit.Tells);
        Assert.Contains(fit.Parameters.AsEnumerable(), one => one.CannotTell is not null);
    }

    [Fact]
    public void Fit_WhatCannotBeFitted_IsRefusedWithWhatIsAllowed()
    {
        var shots = new FittedLane(11).Shots(3);
        Refused("0 shots", []);
        Refused("shot 1: 2 crossings", [shots[0] with { Boards = [new MeasuredBoard(0, 20), new MeasuredBoard(15, 15)] }]);
        Refused("board NaN", [shots[0] with { Boards = [new MeasuredBoard(0, double.NaN), new MeasuredBoard(15, 15), new MeasuredBoard(40, 8)] }]);
        Refused("shot 2: the speed in m/s is NaN", [shots[0], shots[1] with { SpeedMph = double.NaN }]);
        Refused("add shots, or crossings", [shots[0] with { Boards = shots[0].Boards.AsEnumerable().Take(3).ToValueList() }]);
        Assert.Throws<ArgumentException>(() => LaneFit.Fit(_sheet, Ball.Usual, shots, new FitSettings { NoiseBoards = double.NaN }, TestContext.Current.CancellationToken));
        Assert.Throws<ArgumentException>(() => LaneFit.Fit(_sheet, Ball.Usual, shots, new FitSettings { Keep = Enum.GetValues<LaneParameter>().ToValueList() }, TestContext.Current.CancellationToken));

        static void Refused(string message, IReadOnlyList<FitShot> shots) =>
            Assert.Contains(message, Assert.Throws<ArgumentException>(() => LaneFit.Fit(_sheet, Ball.Usual, shots, new FitSettings(), TestContext.Current.CancellationToken)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void On_StretchedPattern_EndsWhereItIsToldAndKeepsItsShape()
    {
        var lane = (LaneNumbers.Of(_sheet) with { PatternFeet = 36 }).On(_sheet);
        Assert.Equal(36.0, lane.PatternFeet!.Value, 1e-12);
        Assert.Equal(_sheet.OilAt(20, 15), lane.OilAt(18, 15), 1e-9);
    }
}
