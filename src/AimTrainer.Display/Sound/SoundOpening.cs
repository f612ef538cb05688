using System.Diagnostics.CodeAnalysis;
using NAudio.Wave;

namespace AimTrainer.Display;

/// <summary>What came of opening a sound device: a player, ready to play, or why there is none.</summary>
public sealed record SoundOpening
{
    private SoundOpening(IWavePlayer? player, string? problem) => (Player, Problem) = (player, problem);

    /// <summary>The player; the caller disposes of it. Null when there is a problem.</summary>
    public IWavePlayer? Player { get; }

    /// <summary>What was found and what to do, on one line; null when there is a player.</summary>
    public string? Problem { get; }

    /// <summary>Whether the device is open.</summary>
    [MemberNotNullWhen(true, nameof(Player))]
    [MemberNotNullWhen(false, nameof(Problem))]
    public bool IsOpen => Player is not null;

    /// <summary>The device is open.</summary>
    public static SoundOpening Of(IWavePlayer player) => new(player, null);

    /// <summary>The device is not open.</summary>
    public static SoundOpening Failed(string problem) => new(null, problem);
}
