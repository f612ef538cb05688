using System.CommandLine;
using System.Net;
using AimTrainer.Domain;
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
        var config = new Option<string?>("--config")
        {
            Description = $"A file of settings (docs/center.md); without it {ServeSettings.FileName} in the data folder, if it is there. The environment wins over it, options win over both.",
            HelpName = "FILE",
        };
        var telemetry = new Option<Uri?>("--telemetry")
        {
            Description = "Send metrics and traces to your own OpenTelemetry collector (OTLP over HTTP), as http://127.0.0.1:4318. Without it none are sent.",
            HelpName = "URL",
            CustomParser = result =>
            {
                var text = result.Tokens[0].Value;
                if (ServeSettings.CollectorOf(text) is { } uri)
                {
                    return uri;
                }

                result.AddError($"--telemetry: found {text}; allowed: {ServeSettings.CollectorAllowed}");
                return null;
            },
        };
        var logJson = new Option<bool>("--log-json") { Description = "Write the log as JSON, an object a line." };
        var check = new Option<bool>("--check") { Description = "Say which settings hold and where each comes from, and do no more." };
        var command = new Command("serve", "Serve the coach's console and the API for a number of stations, until Ctrl+C.")
        {
            urls, stations, lines, hosts, config, telemetry, logJson, check, chain, token,
        };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var link = parsed.GetValue(chain) is { } chainAddress ? ChainSettings.Link(chainAddress, parsed.GetValue(token)) : null;
            var given = new ServeChoice
            {
                Source = "option",
                Urls = Given(parsed, urls) ? parsed.GetValue(urls) : null,
                Stations = Given(parsed, stations) ? parsed.GetValue(stations) : null,
                Lines = parsed.GetValue(lines),
                Hosts = Given(parsed, hosts) ? parsed.GetValue(hosts)!.ToValueList() : null,
                Telemetry = parsed.GetValue(telemetry),
                Logs = parsed.GetValue(logJson) ? LogFormat.Json : null,
            };
            var (chosen, settings) = ServeSettings.Of([given, ServeSettings.OfEnvironment(Environment.GetEnvironmentVariable), .. OfFile(parsed.GetValue(config), DataPlace.Of(parsed))]);
            var options = chosen with
            {
                DataFolder = DataPlace.Named(parsed),
                Record = RecordOption.Of(parsed),
                Chain = link,
            };
            if (parsed.GetValue(check))
            {
                Binding.HostsOf(options.Urls);
                ServeSetting[] places =
                [
                    new("data", DataPlace.Of(parsed), DataPlace.SourceOf(parsed)),
                    new("record", options.Record?.Name ?? "a file in data", options.Record is null ? "usual" : RecordOption.SourceOf(parsed)),
                    new("chain", options.Chain?.Name ?? "none", options.Chain is null ? "usual" : "option"),
                ];
                foreach (var setting in places.Concat(settings))
                {
                    console.Out.WriteLine($"{setting.Name,-13} {setting.Value,-40} {setting.Source}");
                }

                return ExitCodes.Ok;
            }

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

    private static bool Given(ParseResult parsed, Option option) => parsed.GetResult(option) is { Implicit: false };

    private static IEnumerable<ServeChoice> OfFile(string? named, string dataFolder)
    {
        var usual = Path.Combine(dataFolder, ServeSettings.FileName);
        return named is not null ? [ServeSettings.OfFile(named)] : File.Exists(usual) ? [ServeSettings.OfFile(usual)] : [];
    }
}
