using System.CommandLine;
using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>A display of its own, for a session that another process of this machine runs.</summary>
internal static class DisplayCommand
{
    public static Command Create(UserConsole console) => new(
        "display", "Show the session of a station, which another aimtrainer runs on the same data folder, on a monitor of this machine.")
    {
        Of(console, DisplayKind.Projector, "projector", "The target and the last shot on the lane itself, through a projector."),
        Of(console, DisplayKind.Overhead, "overhead", "The screen above the lane: target, last shots, figures, what to do now."),
    };

    private static Command Of(UserConsole console, DisplayKind kind, string name, string description)
    {
        var station = CommonOptions.Whole("--station", "The station (lane) to show, 1 to 64.", 1, 64, 1);
        var monitor = new Option<string?>("--monitor")
        {
            Description = "The monitor to cover, by number or name (see: monitors); without it the first one beside the primary, or the only one.",
            HelpName = "MONITOR",
        };
        var windowed = new Option<bool>("--windowed") { Description = "Show it in an ordinary window." };
        var theme = DisplayOptions.OfTheme();
        var command = new Command(name, $"{description} Escape closes it; Backspace clears the last result.") { station, monitor, windowed, theme };
        command.Validators.Add(result =>
        {
            if (result.GetValue(windowed) && result.GetValue(monitor) is not null)
            {
                result.AddError("--monitor, --windowed: give one of them; a window can be moved to any monitor by hand");
            }
        });
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var colours = DisplayThemes.Read(parsed.GetValue(theme));
            var wish = new DisplayWish(kind, parsed.GetValue(monitor), parsed.GetValue(windowed));
            var maps = new DisplayMaps(DataPlace.Of(parsed), parsed.GetValue(station), console.Error.WriteLine);
            await using var windows = await DisplayWindows.OpenAsync(
                console, parsed.GetValue(station), [wish], DisplayContents.Of(maps, colours, TimeProvider.System), mayCoverPrimary: true,
                console.Error.WriteLine).ConfigureAwait(false);
            if (windows.Problem is { } problem)
            {
                throw new UserException(problem, ExitCodes.Failed);
            }

            return await FollowAsync(console, windows, parsed, parsed.GetValue(station), cancellationToken).ConfigureAwait(false);
        });
        return command;
    }

    /// <summary>Until the window is closed or the program is asked to stop.</summary>
    private static async Task<int> FollowAsync(UserConsole console, DisplayWindows windows, ParseResult parsed, int station, CancellationToken cancellationToken)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var record = new DisplayRecord(DataPlace.Named(parsed), station, TimeProvider.System, windows.News)
        {
            Say = console.Error.WriteLine,
            Open = () => StoreForReading.Open(parsed),
        };
        var following = record.RunAsync(stop.Token);
        await Task.WhenAny(following, windows.Closed).ConfigureAwait(false);
        await stop.CancelAsync().ConfigureAwait(false);
        try
        {
            await following.ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // The window was closed, or somebody asked the program to stop.
        }

        return windows.Closed.IsCompleted ? await windows.Closed.ConfigureAwait(false) : ExitCodes.Ok;
    }
}
