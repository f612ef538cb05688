using System.Collections.Concurrent;

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
            var fit = LaneFit.Fit(_sheet, Ball.Usual, lane.Shots(12), new FitSettings());
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
}
