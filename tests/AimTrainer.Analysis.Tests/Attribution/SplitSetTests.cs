using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

public sealed class SplitSetTests
{
    private static readonly (double Board, double Feet)[] Line = [(15, 15), (7, 42)];

    [Fact]
    public void Result_NoShot_KnowsNothingAndSaysWhy()
    {
        var set = new SplitSetAccumulator(MadeShots.Settings).Result();
        Assert.Equal((0, 0), (set.Shots, set.Split));
        Assert.Null(set.Plan);
        Assert.Equal("no shot", set.PlanWhy);
        Assert.Null(set.LaydownOffBoards.Value);
        Assert.Null(set.AngleSpreadDegrees.Value);
        Assert.Empty(set.Targets);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(9)]
    public void Result_FewShots_KnowWhatTheyCan(int count)
    {
        var set = Of(Some(count));
        Assert.Equal((count, count), (set.Shots, set.Split));
        Assert.NotNull(set.LaydownOffBoards.Value);
        Assert.Equal(count >= 2, set.LaydownOffBoards.Low is not null);
        Assert.Equal(count >= 2, set.LaydownSpreadBoards.Value is not null);
        Assert.Equal(count >= VarianceShares.Fewest, set.Targets[1].Shares is not null);
        Assert.Equal(count >= VarianceShares.Fewest, set.AimDistance.Feet.Value is not null);
        Assert.Equal(count >= SplitSetAccumulator.FewestForUsual ? PlanKind.UsualMovement : PlanKind.StraightThroughTargets, set.Plan!.Kind);
        Assert.All(set.Targets[1].Explanations, found => Assert.Equal($"{count} shots with {Names(found)}; known from 10 on", found.Why));
        Assert.Null(set.Targets[1].SharesWithoutNoise);
        Assert.False(string.IsNullOrEmpty(set.Targets[1].SharesWithoutNoiseWhy));

        static string Names(Explanation found) => found.Why!.Contains("speedMph and", StringComparison.Ordinal) ? "speedMph and revsRpm"
            : found.Why.Contains("speedMph", StringComparison.Ordinal) ? "speedMph" : "revsRpm";
    }

    [Fact]
    public void Result_AllIdentical_ClaimsNoCertainty()
    {
        var set = Of([.. Enumerable.Range(1, 12).Select(i => MadeShots.Shot(20, [(15, 15), (42, 8)], 17, 300).At(i, Line))]);
        Assert.Equal(EstimateLimits.NoScatter, set.LaydownOffBoards.Why);
        Assert.Equal(EstimateLimits.NoScatter, set.LaydownSpreadBoards.Why);
        Assert.Null(set.AimDistance.Feet.Value);
        Assert.Equal("the misses do not scatter", set.Targets[1].SharesWhy);
        Assert.All(set.Targets[1].Explanations, found => Assert.EndsWith("did not vary, or only together", found.Why, StringComparison.Ordinal));
        AssertFinite(set);
    }

    [Fact]
    public void Result_AllMissing_SaysWhatWasNotMeasured()
    {
        var set = Of([.. Enumerable.Range(1, 5).Select(i => MadeShots.Shot(null, []).At(i, Line)), MadeShots.Shot(null, [(15, 12)]).At(6, Line)]);
        Assert.Equal((6, 0), (set.Shots, set.Split));
        Assert.Equal(
            [new NotSplit("nothing measured in the straight part", 5), new NotSplit("one place in the straight part and no launch angle", 1)], set.NotSplit);
        Assert.Null(set.Targets[1].Shares);
    }

    [Fact]
    public void Result_LeftHander_IsTheMirrorOnTheLaneAndTheSameInBoards()
    {
        var lane = LaneProfileReader.Default;
        var mirrored = Some(20).Select(shot => MadeShots.Shot(
            Mirror(shot.Shot.Laydown!.Value),
            shot.Shot.Crossings.Select(crossing => (crossing.Distance.Value, Mirror(crossing.Board))),
            shot.Shot.Speed?.Value.Value,
            shot.Shot.Revs?.Value).At(shot.NumberInSession, Line));
        Assert.Equal(Of(Some(20)).Targets[1].Shares, Of([.. mirrored]).Targets[1].Shares);

        // The same ball on the lane, seen from the right edge and back from the left-hander's own.
        double Mirror(Board board) => lane.BoardOf(lane.PointOf(board.Mirrored(), default, Hand.Right), Hand.Left).Boards;
    }

    [Fact]
    public void Result_SingleTarget_IsHeldAgainstTheUsualAngle()
    {
        ObservedShot[] shots = [.. Some(20).Select(shot => shot.Shot.At(shot.NumberInSession, (7, 42)))];
        Assert.Null(Of(shots[..7]).Plan);
        Assert.Contains("from 8 split shots on (7 here)", Of(shots[..7]).PlanWhy, StringComparison.Ordinal);

        var set = Of(shots);
        Assert.Equal(PlanKind.UsualAngle, set.Plan!.Kind);
        Assert.Equal(0, set.Targets[0].AngleBoards.Value);
        var miss = shots.Average(shot => shot.Targets[0].Miss!.Value.Boards);
        Assert.Equal(miss, set.Targets[0].LaydownBoards.Value!.Value + set.Targets[0].BeyondBoards.Value!.Value, 1e-9);
        // With everything else reckoned as usual, the limits are those of the mean miss.
        var limits = MadeShots.AtTheArrows(7, [.. shots.Select(shot => shot.Targets[0].Board?.Boards)]).ConstantErrorBoards;
        Assert.Equal(limits.Low!.Value, set.Targets[0].LaydownBoards.Low!.Value, 1e-9);
        AssertFinite(set);
    }

    [Fact]
    public void Result_MeanParts_AddUpToTheMeanMiss()
    {
        foreach (var count in new[] { 3, 7, 8, 30 })
        {
            var shots = Some(count);
            var set = Of(shots);
            for (var i = 0; i < 2; i++)
            {
                var target = set.Targets[i];
                Assert.Equal(
                    shots.Average(shot => shot.Targets[i].Miss!.Value.Boards),
                    target.LaydownBoards.Value!.Value + target.AngleBoards.Value!.Value + target.BeyondBoards.Value!.Value,
                    1e-9);
            }
        }
    }

    [Fact]
    public void Result_Plan_MeetsItsTargetsAndIsTheMeanOfTheSplits()
    {
        var shots = Some(30);
        var set = Of(shots);
        var plan = set.Plan!;
        for (var i = 0; i < 2; i++)
        {
            Assert.Equal(Line[i].Board, plan.LaydownBoard + (plan.BoardsAFoot * Line[i].Feet) + plan.BeyondBoards[i], 1e-9);
        }

        var splits = shots.Select(shot => MissSplitter.Split(shot, StraightFit.Of(shot.Shot, MadeShots.Settings.Lane), plan, MadeShots.Settings.Lane)).ToList();
        Assert.Equal(splits.Average(split => split.LaydownOffBoards!.Value), set.LaydownOffBoards.Value!.Value, 1e-9);
        Assert.Equal(splits.Average(split => split.AngleOffDegrees!.Value), set.AngleOffDegrees.Value!.Value, 2e-3);
        Assert.Equal(splits.Average(split => split.Targets[1].AngleBoards!.Value), set.Targets[1].AngleBoards.Value!.Value, 1e-9);
    }

    [Fact]
    public void Result_KnownNoise_LeavesLessSpread()
    {
        var shots = Some(30);
        var noisy = Of(MadeShots.Settings with { NoiseBoards = 0.1 }, shots);
        Assert.True(noisy.LaydownSpreadWithoutNoiseBoards.Value < noisy.LaydownSpreadBoards.Value);
        Assert.True(noisy.AngleSpreadWithoutNoiseDegrees.Value < noisy.AngleSpreadDegrees.Value);
        Assert.NotNull(noisy.Targets[1].SharesWithoutNoise);
        Assert.Null(Of(shots).LaydownSpreadWithoutNoiseBoards.Value);
        Assert.Contains("noise is not known", Of(shots).Targets[1].SharesWithoutNoiseWhy, StringComparison.Ordinal);
    }

    [Fact]
    public void Result_SpeedsOfTwoPlaces_AreNotMixed()
    {
        var shots = Some(20);
        var pins = new ShotReading { LaydownBoard = 20, SpeedMilesPerHour = 14, SpeedPlace = SpeedPlace.Pins, RevsRpm = 300 };
        pins.AddCrossing(15, 15);
        pins.AddCrossing(42, 8);
        var set = Of([.. shots, pins.Check(out _)!.At(21, Line)]);
        var bySpeed = set.Targets[1].Explanations[0];
        Assert.Equal((20, SpeedPlace.Release), (bySpeed.Shots, bySpeed.SpeedAt));
        Assert.Equal(21, set.Targets[1].Explanations[1].Shots);
    }

    [Fact]
    public void Add_OtherPlaces_Throws()
    {
        var accumulator = new SplitSetAccumulator(MadeShots.Settings);
        accumulator.Add(MadeShots.Shot(20, [(15, 15)]).At(1, Line));
        Assert.Throws<ArgumentException>(() => accumulator.Add(MadeShots.Shot(20, [(15, 15)]).At(2, (15, 15), (8, 42))));
        Assert.Throws<ArgumentException>(() => accumulator.Add(MadeShots.Shot(20, [(15, 15)]).At(2, (15, 15))));
    }

    private static ObservedShot[] Some(int count)
    {
        var chance = new Chance(99);
        var bowler = new ModelBowler { Bend = 2, BendSpread = 0.4, LaydownBias = 0.3 };
        return [.. Enumerable.Range(1, count).Select(i => bowler.Throw(chance, i, Line[0], Line[1], LaneProfileReader.Default))];
    }

    private static SplitSet Of(ObservedShot[] shots) => Of(MadeShots.Settings, shots);

    private static SplitSet Of(AccuracySettings settings, ObservedShot[] shots)
    {
        var accumulator = new SplitSetAccumulator(settings);
        shots.ToList().ForEach(shot => accumulator.Add(shot));
        return accumulator.Result();
    }

    private static void AssertFinite(SplitSet set)
    {
        var text = System.Text.Json.JsonSerializer.Serialize(set, DomainJson.Options);
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", text, StringComparison.Ordinal);
    }
}
