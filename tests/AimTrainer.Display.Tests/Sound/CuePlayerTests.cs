using AimTrainer.Domain;
using AimTrainer.Sessions.Tests;

namespace AimTrainer.Display.Tests;

/// <summary>A station that runs, a bowler who throws, and what is heard of it.</summary>
public sealed class CuePlayerTests : IAsyncDisposable
{
    private static readonly CueClips Clips = new();

    private readonly CueMixer _mixer = new(Clips, Loudness.Full);
    private readonly FakeSpeaker _speaker = new();

    public ValueTask DisposeAsync() => _speaker.DisposeAsync();

    [Fact]
    public async Task Run_ShotsOfABlock_AreHeard()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(3));
        using var player = new CuePlayer(running.Station, _mixer, Clips, _speaker);
        await player.StartAsync(TestContext.Current.CancellationToken);

        await running.ThrowAsync(10);
        await AssertNextAsync(Cue.HitBest);
        await running.ThrowAsync(16);
        await AssertNextAsync(Cue.MissLeft);
        await running.ThrowAsync(8);
        await AssertNextAsync(Cue.CloseRight);
        await player.StopAsync(TestContext.Current.CancellationToken);

        Assert.Equal(["centre after 435 ms", "6 left after 390 ms", "2 right after 1450 ms"], _speaker.Asked);
    }

    [Fact]
    public async Task Stop_PictureNotYetListenedTo_IsHeardStill()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(3));
        using var player = new CuePlayer(running.Station, _mixer, Clips, null);
        await running.ThrowAsync(10);
        await player.StopAsync(TestContext.Current.CancellationToken);

        Assert.False(_mixer.IsQuiet);
    }

    [Fact]
    public async Task Run_SessionBegun_NothingIsHeard()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(3));
        await running.ThrowAsync(10);
        using var player = new CuePlayer(running.Station, _mixer, Clips, _speaker);
        await player.StartAsync(TestContext.Current.CancellationToken);
        await running.FollowAsync(new SessionInput.TakeNote(Sample.Start, "x"));
        await player.StopAsync(TestContext.Current.CancellationToken);

        Assert.True(_mixer.IsQuiet);
        Assert.Empty(_speaker.Asked);
    }

    /// <summary>What is heard next begins with this cue.</summary>
    private async Task AssertNextAsync(Cue cue)
    {
        while (_mixer.IsQuiet)
        {
            TestContext.Current.CancellationToken.ThrowIfCancellationRequested();
            await Task.Yield();
        }

        var heard = new float[Clips.Of(cue).Length];
        _mixer.Read(heard);
        while (!_mixer.IsQuiet)
        {
            _mixer.Read(new float[480]);
        }

        Assert.Equal(Clips.Of(cue).ToArray(), heard);
    }
}
