using System.CommandLine;
using AimTrainer.Display;
using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>What can be heard and where: lists cues and sound devices, plays cues, writes them to files.</summary>
internal static class SoundCommand
{
    private const string All = "all";

    public static Command Create(UserConsole console)
    {
        var options = new SoundOptions();
        var play = new Option<string?>("--play") { Description = $"Play a cue by its name, or {All} one after another.", HelpName = $"CUE|{All}" };
        var into = new Option<string?>("--out") { Description = "Write every cue to a WAV file in this folder.", HelpName = "DIR" };
        var json = CommonOptions.Json();
        var command = new Command("sound", "List the cues, what each says, and this machine's sound devices; play the cues or write them to WAV files for a listen.")
        {
            play, into, options.Sound, options.Volume, json,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(play) is { } named && !IsAll(named) && CueNames.Find(named) is null)
            {
                result.AddError($"--play: found {named}; allowed: {All}, {string.Join(", ", CueScores.All.AsEnumerable().Select(score => CueNames.Of(score.Cue)))}");
            }

            if (result.GetValue(json) && (result.GetValue(play) ?? result.GetValue(into)) is not null)
            {
                result.AddError("--json lists cues and devices: leave --play and --out out");
            }
        });
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var clips = new CueClips();
            if (parsed.GetValue(into) is { } folder)
            {
                Write(console, clips, folder);
            }

            if (parsed.GetValue(play) is { } named)
            {
                Cue[] cues = IsAll(named) ? Enum.GetValues<Cue>() : [CueNames.Find(named)!.Value];
                await PlayAsync(console, clips, cues, options, parsed, cancellationToken).ConfigureAwait(false);
            }
            else if (parsed.GetValue(into) is null)
            {
                List(console, clips, parsed.GetValue(json));
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    private static bool IsAll(string named) => string.Equals(named, All, StringComparison.OrdinalIgnoreCase);

    private static void List(UserConsole console, CueClips clips, bool json)
    {
        var listing = SoundDevices.OfThisMachine(TimeProvider.System).List();
        var cues = CueScores.All.AsEnumerable()
            .Select(score => new { name = CueNames.Of(score.Cue), says = score.Meaning, milliseconds = Milliseconds(clips, score.Cue) }).ToList();
        if (json)
        {
            Json.Print(console, new { cues, devices = listing.Devices.AsEnumerable().Select(device => new { device.Name, device.Description }), listing.Problem });
            return;
        }

        console.Out.WriteLine("Cues:");
        foreach (var cue in cues)
        {
            console.Out.WriteLine($"  {cue.name,-16} {cue.milliseconds,5} ms  {cue.says}");
        }

        console.Out.WriteLine();
        console.Out.WriteLine("Sound devices, for --sound:");
        console.Out.WriteLine($"  {SoundDevices.Usual}  the usual device of this machine");
        foreach (var device in listing.Devices.AsEnumerable().Where(device => device.Name != SoundDevices.Usual))
        {
            console.Out.WriteLine($"  {device.Name}  {device.Description}");
        }

        console.Out.WriteLine($"  {SoundDevices.FilePrefix}FILE  a WAV file that takes what would be heard");
        if (listing.Problem is { } problem)
        {
            console.Out.WriteLine(problem);
        }
    }

    private static int Milliseconds(CueClips clips, Cue cue) => (int)clips.Length(new CuePlan([cue], null)).TotalMilliseconds;

    private static void Write(UserConsole console, CueClips clips, string folder)
    {
        try
        {
            Directory.CreateDirectory(folder);
            foreach (var score in CueScores.All)
            {
                var path = Path.Combine(folder, CueFiles.NameOf(score.Cue));
                CueFiles.Write(path, clips, score.Cue);
                console.Out.WriteLine($"{path}  {score.Meaning}");
            }
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new UserException($"{folder}: the cues cannot be written there ({exception.Message.TrimEnd('.', ' ')}): name another folder");
        }
    }

    private static async Task PlayAsync(UserConsole console, CueClips clips, Cue[] cues, SoundOptions options, ParseResult parsed, CancellationToken cancellationToken)
    {
        var mixer = new CueMixer(clips, options.Loudness(parsed));
        if (options.Device(parsed, byDefault: true) is not { } device)
        {
            throw new UserException("--sound off plays nothing: name a device, or leave --play out");
        }

        var opening = SoundDevices.OfThisMachine(TimeProvider.System).Open(device, mixer);
        if (!opening.IsOpen)
        {
            throw new UserException(opening.Problem, ExitCodes.Failed);
        }

        using var player = opening.Player;
        var failed = (Exception?)null;
        player.PlaybackStopped += (_, stopped) => failed = stopped.Exception;
        player.Play();
        foreach (var cue in cues)
        {
            console.Out.WriteLine($"{CueNames.Of(cue)}: {CueScores.Of(cue).Meaning}");
            mixer.Play(new CuePlan([cue], null));
            await SessionSound.HearOutAsync(mixer, player, TimeProvider.System, cancellationToken).ConfigureAwait(false);
            cancellationToken.ThrowIfCancellationRequested();
            if (failed is not null)
            {
                throw new UserException(failed.Message, ExitCodes.Failed);
            }
        }
    }
}
