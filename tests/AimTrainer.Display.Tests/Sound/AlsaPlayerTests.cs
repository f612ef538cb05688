using Microsoft.Extensions.Time.Testing;
using NAudio.Wave;

namespace AimTrainer.Display.Tests;

/// <summary>The player against a device that fails as devices do. Source of the error numbers: Linux, errno-base.h and errno.h.</summary>
public sealed class AlsaPlayerTests
{
    private const int BrokenPipe = -32, StreamsPipe = -86, NoDevice = -19;

    // Whenever somebody asks for the time a second has passed: nothing waits for a real clock.
    private readonly FakeTimeProvider _clock = new() { AutoAdvanceAmount = TimeSpan.FromSeconds(1) };

    [Fact]
    public async Task Play_SamplesThatEnd_AllGivenThenDrained()
    {
        var pcm = new FakePcm();
        var (stopped, given) = await PlayAsync(pcm, 1000);

        Assert.Null(stopped);
        Assert.Equal(given, pcm.Taken);
        Assert.True(pcm.Drained);
        Assert.True(pcm.Disposed);
    }

    [Theory]
    [InlineData(BrokenPipe)]
    [InlineData(StreamsPipe)]
    public async Task Play_DeviceRanDryOrSlept_RecoversAndLosesNothing(int error)
    {
        var pcm = new FakePcm(240, error, 7, error, 0);
        var (stopped, given) = await PlayAsync(pcm, 1000);

        Assert.Null(stopped);
        Assert.Equal([error, error], pcm.Recovered);
        Assert.Equal(given, pcm.Taken);
    }

    [Fact]
    public async Task Play_DeviceUnplugged_StopsAndSaysSoOnce()
    {
        var pcm = new FakePcm(240, NoDevice) { RecoverAnswer = NoDevice };
        var (stopped, _) = await PlayAsync(pcm, 1000);

        Assert.Equal("sound device fake stopped (it was unplugged): plug it in and start again", stopped!.Message);
        Assert.True(pcm.Disposed);
    }

    [Fact]
    public async Task Play_DeviceThatNeverRecovers_GivesUp()
    {
        var pcm = new FakePcm([.. Enumerable.Repeat(BrokenPipe, 100)]);
        var (stopped, _) = await PlayAsync(pcm, 1000);

        Assert.Contains("error 32", stopped!.Message, StringComparison.Ordinal);
        Assert.Equal(8, pcm.Recovered.Count);
    }

    [Fact]
    public async Task Play_DeviceThatTakesAllAtOnce_IsHeldToThePaceOfTheClock()
    {
        // The clock stands still: only the buffer and the period that goes beyond it may be given.
        var clock = new FakeTimeProvider();
        var pcm = new FakePcm();
        using var samples = new EndingSamples(48_000);
        var player = new AlsaPlayer(pcm, clock);
        player.Init(samples);
        player.Play();
        await samples.ReadAsync(5);
        player.Dispose();

        Assert.Equal((SoundFormat.Buffer + SoundFormat.Period).Ticks, SoundFormat.Time(pcm.Taken.Count / 4).Ticks);
        Assert.Equal(PlaybackState.Stopped, player.PlaybackState);
    }

    [Fact]
    public void Init_OtherFormat_Throws()
    {
        using var player = new AlsaPlayer(new FakePcm(), _clock);

        Assert.Throws<ArgumentException>(() => player.Init(new SilenceProvider(SoundFormat.Floats)));
        Assert.Throws<InvalidOperationException>(player.Play);
    }

    private async Task<(Exception? Stopped, byte[] Given)> PlayAsync(FakePcm pcm, int frames)
    {
        using var samples = new EndingSamples(frames);
        var stopped = new TaskCompletionSource<Exception?>(TaskCreationOptions.RunContinuationsAsynchronously);
        using var player = new AlsaPlayer(pcm, _clock);
        player.PlaybackStopped += (_, told) => stopped.SetResult(told.Exception);
        player.Init(samples);
        player.Play();
        var why = await stopped.Task.WaitAsync(TimeSpan.FromSeconds(30), TestContext.Current.CancellationToken);
        player.Dispose();
        return (why, samples.Given);
    }
}
