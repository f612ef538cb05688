using System.Net;
using AimTrainer.Store;
using AimTrainer.Store.Postgres;
using AimTrainer.Web;
using Microsoft.Extensions.DependencyInjection;

namespace AimTrainer.Setup;

/// <summary>How a host of the console is to be.</summary>
internal sealed record ConsoleOptions
{
    /// <summary>Where the record is; null is the usual place.</summary>
    public string? DataFolder { get; init; }

    /// <summary>The database that holds the record; null for the folder's file.</summary>
    public PostgresPlace? Record { get; init; }

    /// <summary>The line to the chain; null for a center that sends to none.</summary>
    public IChainLink? Chain { get; init; }

    /// <summary>How many stations.</summary>
    public int Stations { get; init; } = 1;

    /// <summary>Where to listen, separated by semicolons.</summary>
    public string Urls { get; init; } = ConsoleHost.UsualUrl;

    /// <summary>Where to take lines; null takes none.</summary>
    public IPEndPoint? Lines { get; init; }

    /// <summary>Names that it answers to beside those in <see cref="Urls"/>.</summary>
    public IReadOnlyList<string> HostNames { get; init; } = [];

    /// <summary>Shots a second that are taken from one address.</summary>
    public int ShotsASecond { get; init; } = new ConsoleSettings { DataFolder = "" }.ShotsASecond;

    /// <summary>The collector that metrics and traces are sent to; null sends none.</summary>
    public Uri? Telemetry { get; init; }

    /// <summary>How the log is written.</summary>
    public LogFormat Logs { get; init; }

    /// <summary>What else is to be registered: a test's clock or log.</summary>
    public Action<IServiceCollection>? Adjust { get; init; }
}
