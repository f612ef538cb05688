namespace AimTrainer.Display;

/// <summary>Error numbers of ALSA in words: what was found and what to do.</summary>
internal static class AlsaProblem
{
    // Source: the numbers of Linux, include/uapi/asm-generic/errno-base.h.
    private const int NotPermitted = 1, NoEntry = 2, NoSuchAddress = 6, AccessDenied = 13, Busy = 16, NoDevice = 19, Invalid = 22;

    /// <summary>Why a device could not be opened.</summary>
    public static string OfOpening(string device, int error, string text) => $"sound device {device}: " + (-error) switch
    {
        NoEntry or NoSuchAddress or NoDevice => "not there: plug one in, or name one of those that \"aimtrainer sound\" lists",
        Busy => "in use by another program: close that one, or name another device",
        NotPermitted or AccessDenied => "this user may not use it: add the user to the group audio and log in again",
        Invalid => "no card of that number, or it cannot play 48000 Hz in stereo: name one of those that \"aimtrainer sound\" lists",
        _ => $"it cannot be opened ({text}): name one of those that \"aimtrainer sound\" lists",
    };

    /// <summary>Why a device stopped.</summary>
    public static string OfPlaying(string device, int error) =>
        $"sound device {device} stopped ({(-error == NoDevice ? "it was unplugged" : $"error {-error}")}): plug it in and start again";
}
