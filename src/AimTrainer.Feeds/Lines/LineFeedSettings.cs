using System.Net;

namespace AimTrainer.Feeds;

/// <summary>How lines are taken over TCP.</summary>
public sealed record LineFeedSettings
{
    /// <summary>Where to listen; port 0 takes a free one.</summary>
    public required IPEndPoint Address { get; init; }

    /// <summary>Longest line, bytes without its end; a longer one is passed over and refused. 16 KiB.</summary>
    public int LongestLine { get; init; } = 16 * 1024;

    /// <summary>Most connections at once; one more is told so and closed. 128.</summary>
    public int MostConnections { get; init; } = 128;

    /// <summary>Most connections at once from one address, so that one machine cannot take all places; one more is told so and closed. 64.</summary>
    public int MostFromOneAddress { get; init; } = 64;

    /// <summary>
    /// How long a connection may be still before the network asks whether its other end is there; one that was cut without a word (power,
    /// Wi-Fi) is given up a minute after. 30 s.
    /// </summary>
    public TimeSpan AskIfThereAfter { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>Without a line for so long a feed counts as silent. 15 s.</summary>
    public TimeSpan SilentAfter { get; init; } = TimeSpan.FromSeconds(15);

    /// <summary>How long a connection may take for its first line. 10 s.</summary>
    public TimeSpan HelloPatience { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>How long a reader may leave its answers lying before it is cut off. 30 s.</summary>
    public TimeSpan AnswerPatience { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>Lines a second that are taken from one connection; what comes faster waits on the wire. 200.</summary>
    public int MostLinesASecond { get; init; } = 200;

    /// <summary>After so many refused lines in a row a connection is closed: whatever is there does not speak this. 1000.</summary>
    public int MostRefusedInARow { get; init; } = 1000;
}
