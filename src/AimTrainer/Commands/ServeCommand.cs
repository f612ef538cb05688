using System.CommandLine;
using System.Net;
using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>A host for many stations: the coach's console, the API, the line feed, the record.</summary>
internal static class ServeCommand
{
    public static Command Create(UserConsole console)
    {
        var urls = new Option<string>("--urls")
        {
            Description = "Where to listen. Beyond this machine only with a passphrase (see: passphrase).",
            HelpName = "URL[;URL]",
            DefaultValueFactory = _ => ConsoleHost.UsualUrl,
        };
        var stations = CommonOptions.Whole("--stations", "How many stations (lanes), 1 to 64.", 1, 64, 1);
        var lines = LinesOption.Create();
        var hosts = new Option<string[]>("--host")
        {
            Description = "A name that the network knows this machine by, when the console is opened by that name.",
            HelpName = "NAME",
            DefaultValueFactory = _ => [],
        };
        var chain = ChainSettings.Address("--chain", "Send this center's events to the chain there, whenever it can be reached (docs/chain.md).");
        var token = ChainSettings.TokenFile();
        var command = new Command("serve", "Serve the coach's console and the API for a number of stations, until Ctrl+C.") { urls, stations, lines, hosts, chain, token };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var link = parsed.GetValue(chain) is { } chainAddress ? ChainSettings.Link(chainAddress, parsed.GetValue(token)) : null;
            var options = new ConsoleOptions
            {
                Chain = link,
                DataFolder = DataPlace.Named(parsed),
                Record = RecordOption.Of(parsed),
                Stations = parsed.GetValue(stations),
                Urls = parsed.GetValue(urls)!,
                Lines = parsed.GetValue(lines),
                HostNames = parsed.GetValue(hosts)!,
            };
            await using var host = await ConsoleHost.OpenAsync(options, cancellationToken).ConfigureAwait(false);
            console.Out.WriteLine($"The console is at {string.Join(" and ", host.Addresses)} (Ctrl+C ends it; what was acknowledged is kept in {host.RecordPlace})");
            if (host.LinesAddress is { } address)
            {
                console.Out.WriteLine($"Lines are taken at {address} ({(IPAddress.IsLoopback(address.Address) ? "this machine only; " : "")}docs/feeds.md)");
            }

            if (link is not null)
            {
                console.Out.WriteLine($"Events are sent to {link.Name} when it can be reached (aimtrainer sync status tells how that stands)");
            }

            await host.UntilStoppedAsync(cancellationToken).ConfigureAwait(false);
            return ExitCodes.Ok;
        });
        return command;
    }
}
