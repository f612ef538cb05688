namespace AimTrainer.Motion.Tests;

/// <summary>One release or a million: the same digits.</summary>
public sealed class SameDigitsTests
{
    private const int Count = 1003;

    [Fact]
    public void Run_ManyAtOnce_GivesTheBitsOfEachAlone()
    {
        var (lane, ball, releases) = Throws();
        var together = new PathEnd[Count];
        Paths.Run(lane, ball, releases, together);
        for (var i = 0; i < Count; i++)
        {
            var alone = new PathEnd[1];
            Paths.Run(lane, ball, releases.AsSpan(i, 1), alone);
            Assert.Equal(Bits.Of(alone[0]), Bits.Of(together[i]));
            Assert.Equal(Bits.Of(alone[0]), Bits.Of(Paths.Trace(lane, ball, releases[i]).End));
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    public void RunOnCores_AnyNumber_GivesTheBitsOfOne(int cores)
    {
        var (lane, ball, releases) = Throws();
        var (one, many) = (new PathEnd[Count], new PathEnd[Count]);
        Paths.Run(lane, ball, releases, one);
        Paths.RunOnCores(lane, ball, releases, many, cores, TestContext.Current.CancellationToken);
        Assert.Equal(one.Select(end => Bits.Of(end)), many.Select(end => Bits.Of(end)));
    }

    [Fact]
    public void Run_Backwards_GivesTheSameBits()
    {
        var (lane, ball, releases) = Throws();
        var (there, back) = (new PathEnd[Count], new PathEnd[Count]);
        Paths.Run(lane, ball, releases, there);
        Paths.Run(lane, ball, [.. releases.Reverse()], back);
        Assert.Equal(there.Select(end => Bits.Of(end)), back.Reverse().Select(end => Bits.Of(end)));
    }

    [Fact]
    public void Run_ManyPaths_AllocatesNothing()
    {
        var (lane, ball, releases) = Throws();
        var ends = new PathEnd[Count];
        Paths.Run(lane, ball, releases, ends);
        var before = GC.GetAllocatedBytesForCurrentThread();
        Paths.Run(lane, ball, releases, ends);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    private static (LaneSurface Lane, Ball Ball, Release[] Releases) Throws() =>
        (PathCases.Lane("house40"), Ball.Usual, [.. Enumerable.Range(0, Count).Select(i => RandomThrow.From((ulong)i).Release)]);
}
