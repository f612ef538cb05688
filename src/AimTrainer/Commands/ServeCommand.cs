using System.CommandLine;
using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>A host for many stations: the coach's console, the API, the record.</summary>
internal static class ServeCommand
{
    public static Command Create(UserConsole console)
    {
        var urls = new Option<string>("--urls")
        {
            Description = "Where to listen.",
            HelpName = "URL[;URL]",
            DefaultValueFactory = _ => ConsoleHost.UsualUrl,
        };
        var stations = CommonOptions.Whole("--stations", "How many stations (lanes), 1 to 64.", 1, 64, 1);
        var command = new Command("serve", "Serve the coach's console and the API for a number of stations, until Ctrl+C.") { urls, stations };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            await using var host = await ConsoleHost.OpenAsync(
                DataPlace.Named(parsed), parsed.GetValue(stations), parsed.GetValue(urls)!, cancellationToken).ConfigureAwait(false);
            console.Out.WriteLine($"The console is at {string.Join(" and ", host.Addresses)} (Ctrl+C ends it; what was acknowledged is kept in {host.RecordFile})");
            await host.UntilStoppedAsync(cancellationToken).ConfigureAwait(false);
            return ExitCodes.Ok;
        });
        return command;
    }
}
