using Microsoft.Extensions.Time.Testing;
using NAudio.Wave;

namespace AimTrainer.Display.Tests;

/// <summary>The real library, on its own devices that need no card: "null" and "file".</summary>
public sealed class AlsaSoundTests : IDisposable
{
    private readonly FakeTimeProvider _clock = new() { AutoAdvanceAmount = TimeSpan.FromSeconds(1) };
    private readonly string _folder = Directory.CreateTempSubdirectory("aimtrainer-alsa-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Open_FileDevice_HoldsTheCueSampleForSample()
    {
        var path = Path.Combine(_folder, "heard.wav");
        var clips = new CueClips();
        var expected = new byte[clips.Of(Cue.MissLeft).Length * 2];
        new EndingClip(clips, Cue.MissLeft).ToWaveProvider16().Read(expected);
        await PlayAsync($"file:'{path}',wav", new EndingClip(clips, Cue.MissLeft));

        var heard = WavFiles.Read(path);
        Assert.Equal(expected, heard.SelectMany(sample => BitConverter.GetBytes((short)(sample * 32768))));
        Assert.InRange(Spectrum.Strongest(Spectrum.Channel(heard, 0)), 329.63 * 0.99, 329.63 * 1.01);
    }

    [Fact]
    public async Task Open_NullDevice_TakesACueToItsEnd() => await PlayAsync("null", new EndingClip(new CueClips(), Cue.BlockEnd));

    [Fact]
    public void List_WithoutACard_HasTheNullDevice()
    {
        var listing = new AlsaSound(AlsaSound.LibraryName, _clock).List();

        Assert.Null(listing.Problem);
        Assert.Contains(listing.Devices, device => device.Name == "null" && device.Description.StartsWith("Discard all samples", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("hw:77", "no card of that number, or it cannot play 48000 Hz in stereo: name")]
    [InlineData("no-such-device", "not there: plug one in, or name")]
    public void Open_DeviceThatIsNotThere_SaysWhatToDo(string device, string words)
    {
        var opening = new AlsaSound(AlsaSound.LibraryName, _clock).Open(device, new CueMixer(new CueClips(), Loudness.Full));

        Assert.False(opening.IsOpen);
        Assert.Equal($"sound device {device}: {words} one of those that \"aimtrainer sound\" lists", opening.Problem);
    }

    [Fact]
    public void Open_LibraryThatIsNotThere_SaysWhatToInstall()
    {
        var sound = new AlsaSound("libasound-that-is-not-there.so.2", _clock);

        var problem = sound.Open(null, new CueMixer(new CueClips(), Loudness.Full)).Problem;
        Assert.StartsWith("libasound-that-is-not-there.so.2 is not on this machine: install", problem, StringComparison.Ordinal);
        Assert.NotNull(sound.List().Problem);
    }

    [Fact]
    public void Open_LibraryThatIsAnother_SaysWhatToInstall() =>
        Assert.StartsWith("libc.so.6 is not on this machine", new AlsaSound("libc.so.6", _clock).List().Problem, StringComparison.Ordinal);

    [Theory]
    [InlineData(-16, "in use by another program")]
    [InlineData(-13, "this user may not use it: add the user to the group audio")]
    [InlineData(-1, "this user may not use it: add the user to the group audio")]
    [InlineData(-5, "it cannot be opened (Input/output error)")]
    public void OfOpening_ErrorNumbers_InWords(int error, string words)
    {
        var problem = AlsaProblem.OfOpening("hw:0", error, "Input/output error");

        Assert.Contains(words, problem, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', problem);
    }

    private async Task PlayAsync(string device, ISampleProvider samples)
    {
        var opening = new AlsaSound(AlsaSound.LibraryName, _clock).Open(device, samples);
        Assert.Null(opening.Problem);
        var stopped = new TaskCompletionSource<Exception?>(TaskCreationOptions.RunContinuationsAsynchronously);
        using var player = opening.Player!;
        player.PlaybackStopped += (_, told) => stopped.SetResult(told.Exception);
        player.Play();
        Assert.Null(await stopped.Task.WaitAsync(TimeSpan.FromSeconds(30), TestContext.Current.CancellationToken));
    }

    /// <summary>One cue, then the end.</summary>
    private sealed class EndingClip(CueClips clips, Cue cue) : ISampleProvider
    {
        private int _position;

        public WaveFormat WaveFormat => SoundFormat.Floats;

        public int Read(Span<float> buffer)
        {
            var left = clips.Of(cue)[_position..];
            var count = Math.Min(left.Length, buffer.Length);
            left[..count].CopyTo(buffer);
            _position += count;
            return count;
        }
    }
}
