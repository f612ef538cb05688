using System.CommandLine;
using AimTrainer.Commands;
using AimTrainer.Display;

namespace AimTrainer.Setup;

/// <summary>The options about what is heard; for every command that runs a session.</summary>
internal sealed class SoundOptions
{
    /// <summary>What <c>--sound</c> takes for silence.</summary>
    public const string Off = "off";

    private const double UsualVolume = 70;

    public Option<string?> Sound { get; } = CommonOptions.Name(
        "--sound", $"Where the cues are heard: a sound device (see: aimtrainer sound), {SoundDevices.Usual}, {SoundDevices.FilePrefix}FILE, or {Off}.");

    public Option<double?> Volume { get; } = CommonOptions.Number("--volume", $"How loud the cues are, in percent; {UsualVolume} without it.", 0, 100, "PERCENT");

    public Option<bool> Speak { get; } = new("--speak") { Description = "Say the miss in boards after its cue, where the drill tells it, through the system's speech program." };

    public IEnumerable<Option> All => [Sound, Volume, Speak];

    /// <summary>The device to open, or null for silence.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="byDefault">Whether the usual device is opened when none is named.</param>
    public string? Device(ParseResult parsed, bool byDefault) => parsed.GetValue(Sound) switch
    {
        null => byDefault ? SoundDevices.Usual : null,
        var named when string.Equals(named, Off, StringComparison.OrdinalIgnoreCase) => null,
        var named => named,
    };

    /// <summary>How loud.</summary>
    public Loudness Loudness(ParseResult parsed) => Display.Loudness.FromPercent(parsed.GetValue(Volume) ?? UsualVolume);
}
