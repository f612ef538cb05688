using System.CommandLine;
using AimTrainer.Display;
using NAudio.Wave;

namespace AimTrainer.Setup;

/// <summary>The sound of one station while its session runs: a device, a listener, and a voice when one is asked for.</summary>
internal sealed class SessionSound : IAsyncDisposable
{
    private static readonly TimeSpan LongestCue = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan LongestSaying = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan LookAgain = TimeSpan.FromMilliseconds(10);

    private readonly CueMixer? _mixer;
    private readonly IWavePlayer? _device;
    private readonly ISpeaker? _speaker;
    private readonly CuePlayer? _player;
    private readonly TimeProvider _clock;
    private readonly CancellationToken _hurry;

    private SessionSound(CueMixer? mixer, IWavePlayer? device, ISpeaker? speaker, CuePlayer? player, TimeProvider clock, CancellationToken hurry) =>
        (_mixer, _device, _speaker, _player, _clock, _hurry) = (mixer, device, speaker, player, clock, hurry);

    /// <summary>Opens what the options ask for and listens to the station. Whatever is wrong is a notice, and the session goes on.</summary>
    /// <param name="options">The options.</param>
    /// <param name="parsed">The command line.</param>
    /// <param name="byDefault">Whether there is sound when no device is named.</param>
    /// <param name="live">The session; its station is listened to.</param>
    /// <param name="notice">Told once of each thing that is wrong.</param>
    public static async Task<SessionSound> StartAsync(SoundOptions options, ParseResult parsed, bool byDefault, LiveSession live, Action<string> notice)
    {
        var name = options.Device(parsed, byDefault);
        var speaks = parsed.GetValue(options.Speak);
        if (name is null && !speaks)
        {
            return new SessionSound(null, null, null, null, live.Clock, live.Stopping);
        }

        var clips = new CueClips();
        var mixer = new CueMixer(clips, options.Loudness(parsed));
        var device = name is null ? null : Open(name, mixer, live.Clock, notice);
        var speaker = speaks ? Voice(live.Clock, notice) : null;
        var player = new CuePlayer(live.Station, mixer, clips, speaker);
        await player.StartAsync(live.Stopping).ConfigureAwait(false);
        return new SessionSound(mixer, device, speaker, player, live.Clock, live.Stopping);
    }

    /// <summary>Lets the last cue and the last words be heard to their end, unless the program is asked to stop, and closes everything.</summary>
    public async ValueTask DisposeAsync()
    {
        if (_player is not null)
        {
            await _player.StopAsync(CancellationToken.None).ConfigureAwait(false);
            _player.Dispose();
        }

        if (_device is not null)
        {
            await HearOutAsync(_mixer!, _device, _clock, _hurry).ConfigureAwait(false);
        }

        if (_speaker is not null)
        {
            await FinishSayingAsync(_speaker).ConfigureAwait(false);
            await _speaker.DisposeAsync().ConfigureAwait(false);
        }

        _device?.Dispose();
    }

    /// <summary>Waits until all that was asked for has been heard.</summary>
    public static async Task HearOutAsync(CueMixer mixer, IWavePlayer device, TimeProvider clock, CancellationToken hurry)
    {
        var startedAt = clock.GetTimestamp();
        try
        {
            while (!mixer.IsQuiet && device.PlaybackState == PlaybackState.Playing && clock.GetElapsedTime(startedAt) < LongestCue)
            {
                await Task.Delay(LookAgain, clock, hurry).ConfigureAwait(false);
            }

            await Task.Delay(SoundFormat.Buffer, clock, hurry).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            // Asked to stop: the rest is not heard.
        }
    }

    private async Task FinishSayingAsync(ISpeaker speaker)
    {
        using var patience = new CancellationTokenSource(LongestSaying, _clock);
        using var linked = CancellationTokenSource.CreateLinkedTokenSource(patience.Token, _hurry);
        try
        {
            await speaker.FinishAsync(linked.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            // Asked to stop, or it takes too long: the rest is not said.
        }
    }

    /// <returns>A device that plays, or null for silence.</returns>
    private static IWavePlayer? Open(string name, CueMixer mixer, TimeProvider clock, Action<string> notice)
    {
        var opening = SoundDevices.OfThisMachine(clock).Open(name, mixer);
        if (!opening.IsOpen)
        {
            notice($"no sound: {opening.Problem}; the session goes on silent");
            return null;
        }

        opening.Player.PlaybackStopped += (_, stopped) =>
        {
            if (stopped.Exception is { } exception)
            {
                notice($"no sound any more: {exception.Message}; the session goes on silent");
            }
        };
        opening.Player.Play();
        return opening.Player;
    }

    private static ProcessSpeaker? Voice(TimeProvider clock, Action<string> notice)
    {
        if (SpeechProgram.Find(SpeechProgram.OfThisSystem(), Environment.GetEnvironmentVariable("PATH")) is { } program)
        {
            return new ProcessSpeaker(program, notice, clock);
        }

        var programs = string.Join(" or ", SpeechProgram.OfThisSystem().AsEnumerable().Select(one => one.File));
        notice($"--speak: no speech program found; install one ({programs}). The cues go on without words");
        return null;
    }
}
