using System.Net;
using AimTrainer.Domain;

namespace AimTrainer.Setup;

/// <summary>What one source (a file, the environment, the options) says of how a host is to be; null where it says nothing.</summary>
internal sealed record ServeChoice
{
    /// <summary>What messages and <c>--check</c> call the source.</summary>
    public required string Source { get; init; }

    /// <summary>Where to listen, separated by semicolons.</summary>
    public string? Urls { get; init; }

    /// <summary>How many stations.</summary>
    public int? Stations { get; init; }

    /// <summary>Where lines are taken.</summary>
    public IPEndPoint? Lines { get; init; }

    /// <summary>More names of this machine.</summary>
    public ValueList<string>? Hosts { get; init; }

    /// <summary>Shots a second that are taken from one address.</summary>
    public int? ShotsASecond { get; init; }

    /// <summary>The collector that metrics and traces are sent to.</summary>
    public Uri? Telemetry { get; init; }

    /// <summary>How the log is written.</summary>
    public LogFormat? Logs { get; init; }
}
