using Microsoft.Extensions.Time.Testing;
using NAudio.Wave;

namespace AimTrainer.Display.Tests;

/// <summary>How soon a cue starts, in virtual time: the device plays one sample in 1/48000 s and holds at most its buffer.</summary>
public sealed class PacedPlayerTests
{
    private static readonly TimeSpan Allowed = TimeSpan.FromMilliseconds(30);
    private static readonly CueClips Clips = new();

    private readonly FakeTimeProvider _clock = new();
    private readonly CueMixer _mixer = new(Clips, Loudness.Full);

    public static TheoryData<int> Microseconds() => new(Enumerable.Range(0, 11).Select(step => 50_000 + (step * 500)));

    [Theory]
    [MemberData(nameof(Microseconds))]
    public void Play_Quiet_CueIsGivenAndHeardWithinThirtyMilliseconds(int playedAfter)
    {
        using var written = new RecordingStream(_clock);
        using var player = Playing(written);
        var asked = TimeSpan.FromMicroseconds(playedAfter);
        Advance(asked);
        _mixer.Play(new CuePlan([Cue.Hit], null));
        Advance(TimeSpan.FromMilliseconds(100));

        var (given, heard) = written.FirstSound(TimeSpan.Zero)!.Value;
        Assert.InRange(given - asked, TimeSpan.Zero, SoundFormat.Period);
        Assert.InRange(heard - asked, TimeSpan.Zero, Allowed);
    }

    [Theory]
    [MemberData(nameof(Microseconds))]
    public void Play_WhileAnotherSounds_NewCueIsHeardWithinThirtyMilliseconds(int playedAfter)
    {
        using var written = new RecordingStream(_clock);
        using var player = Playing(written);
        _mixer.Play(new CuePlan([Cue.BlockEnd], null));
        var asked = TimeSpan.FromMicroseconds(playedAfter);
        Advance(asked);
        _mixer.Play(new CuePlan([Cue.Narrower], null));
        Advance(TimeSpan.FromMilliseconds(400));

        var alone = new CueMixer(Clips, Loudness.Full);
        alone.Play(new CuePlan([Cue.Narrower], null));
        var expected = new byte[4 * SoundFormat.Frames(TimeSpan.FromMilliseconds(60))];
        alone.ToWaveProvider16().Read(expected);
        Assert.InRange(written.FirstMatch(expected)!.Value - asked, TimeSpan.Zero, Allowed);
    }

    [Fact]
    public void Play_AnyTime_NeverMoreThanTheBufferAhead()
    {
        using var written = new RecordingStream(_clock);
        using var player = Playing(written);
        for (var ms = 0; ms < 200; ms++)
        {
            var ahead = SoundFormat.Time(written.Length / 4) - TimeSpan.FromMilliseconds(ms);
            Assert.InRange(ahead, SoundFormat.Buffer - SoundFormat.Period, SoundFormat.Buffer);
            Advance(TimeSpan.FromMilliseconds(1));
        }
    }

    [Fact]
    public void Write_StreamFails_StopsAndSaysWhy()
    {
        using var written = new RecordingStream(_clock);
        using var player = Playing(written);
        var stopped = new List<Exception?>();
        player.PlaybackStopped += (_, told) => stopped.Add(told.Exception);
        written.IsFull = true;
        Advance(TimeSpan.FromMilliseconds(50));

        Assert.Equal("no space left", Assert.Single(stopped)!.Message);
        Assert.Equal(PlaybackState.Stopped, player.PlaybackState);
    }

    [Fact]
    public void Stop_Playing_GivesNothingMore()
    {
        using var written = new RecordingStream(_clock);
        using var player = Playing(written);
        Advance(TimeSpan.FromMilliseconds(50));
        player.Stop();
        var length = written.Length;
        Advance(TimeSpan.FromMilliseconds(50));

        Assert.Equal(length, written.Length);
    }

    [Fact]
    public void Open_WavFile_HoldsWhatWasHeard()
    {
        var folder = Directory.CreateTempSubdirectory("aimtrainer-sound-").FullName;
        var path = Path.Combine(folder, "heard.wav");
        var opening = new SoundDevices(new NoSound(), _clock).Open($"wav:{path}", _mixer);
        using (var player = opening.Player!)
        {
            player.Play();
            _mixer.Play(new CuePlan([Cue.MissLeft], null));
            Advance(TimeSpan.FromMilliseconds(500));
        }

        var heard = WavFiles.Read(path);
        Directory.Delete(folder, recursive: true);
        Assert.InRange(Spectrum.Strongest(Spectrum.Channel(heard, 0)), 329.63 * 0.99, 329.63 * 1.01);
        Assert.InRange(Spectrum.Energy(Spectrum.Channel(heard, 0)) / Spectrum.Energy(Spectrum.Channel(heard, 1)), 15, 40);
    }

    [Fact]
    public void Open_WavFileInAFolderThatIsNotThere_SaysSo()
    {
        var opening = new SoundDevices(new NoSound(), _clock).Open("wav:/no/such/folder/x.wav", _mixer);

        Assert.StartsWith("/no/such/folder/x.wav: the sound cannot be written there", opening.Problem, StringComparison.Ordinal);
        Assert.EndsWith("name another file", opening.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_SystemWithoutSound_SaysSo()
    {
        var devices = new SoundDevices(new NoSound(), _clock);

        Assert.Equal(NoSound.Why, devices.Open("default", _mixer).Problem);
        Assert.Equal(NoSound.Why, devices.List().Problem);
    }

    private PacedPlayer Playing(Stream written)
    {
        var player = new PacedPlayer(_clock, written);
        player.Init(_mixer.ToWaveProvider16());
        player.Play();
        return player;
    }

    private void Advance(TimeSpan time)
    {
        for (var left = time; left > TimeSpan.Zero; left -= TimeSpan.FromMicroseconds(500))
        {
            _clock.Advance(left < TimeSpan.FromMicroseconds(500) ? left : TimeSpan.FromMicroseconds(500));
        }
    }
}
