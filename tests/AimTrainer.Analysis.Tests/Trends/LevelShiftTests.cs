namespace AimTrainer.Analysis.Tests;

public sealed class LevelShiftTests
{
    [Fact]
    public void Of_Nile_FindsTheKnownChange()
    {
        // Source: reference statistics.md section 4.6: least-squares split after 1898 (R help of datasets::Nile: "near 1898"), means
        // 1097.75 and 849.9722, sums of squares 2835156.75 and 1597457.1944, gain 48.158.
        var shift = LevelShift.Of(Series.Of(Nile.Flow, first: 1871))!;
        Assert.Equal((28, 1898.0, true), (shift.After, shift.LastBefore, shift.Found));
        Assert.Equal(1097.75, shift.MeanBefore, 1e-9);
        Assert.Equal(849.9722, shift.MeanAfter, 5e-5);
        Assert.Equal(2835156.75, shift.SquaresOfOne, 1e-6);
        Assert.Equal(1597457.1944, shift.SquaresOfTwo, 5e-5);
        Assert.Equal(48.158, shift.BicGain, 5e-4);
        Assert.True(shift.AgainstLine > 0);
    }

    [Fact]
    public void Of_Nile_FallsByRank()
    {
        // Source: reference statistics.md section 4.6: S = -1387, Z = -4.128067.
        var test = MannKendall.Of(Series.Of(Nile.Flow, first: 1871));
        Assert.Equal(-1387, test.S);
        Assert.Equal(-4.128067, test.Z!.Value, 5e-7);
    }

    [Fact]
    public void Of_FewerThanEight_IsUnknown() => Assert.Null(LevelShift.Of(Series.Of([1, 1, 1, 5, 5, 5, 5])));

    [Fact]
    public void Of_AllEqual_FindsNone() => Assert.False(LevelShift.Of(Series.Of([.. Enumerable.Repeat(2.0, 12)]))!.Found);

    [Fact]
    public void Of_ShiftNearAnEnd_LeavesFourOnEachSide()
    {
        var shift = LevelShift.Of(Series.Of([5, 5, 1, 1, 1, 1, 1, 1, 1, 1]))!;
        Assert.InRange(shift.After, LevelShift.FewestOnASide, 10 - LevelShift.FewestOnASide);
    }

    [Theory]
    // Source: reference statistics.md section 4.8: found by chance in 0.9 % of series of 24 sessions, 0.5 % of 48, at a single look.
    [InlineData(24, 0.009)]
    [InlineData(48, 0.005)]
    public void Of_Noise_FindsOneAsSeldomAsPublished(int sessions, double share)
    {
        const int Samples = 3000;
        var found = Enumerable.Range(0, Samples).Count(sample =>
        {
            var noise = new Normal((ulong)((sample * 100) + sessions));
            return LevelShift.Of(Series.Of([.. Enumerable.Range(0, sessions).Select(_ => noise.Next())]))!.Found;
        });
        Assert.InRange(found, 0, Samples * share * 2);
    }

    [Fact]
    public void Of_SteadyFall_SaysALineDescribesItBetter() =>
        Assert.True(LevelShift.Of(Series.Of([.. Enumerable.Range(0, 24).Select(i => 3 - (0.05 * i) + (i % 2 * 0.02))]))!.AgainstLine < 0);
}
