using System.CommandLine;
using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>A display of its own, for a session that another process of this machine runs.</summary>
internal static class DisplayCommand
{
    public static Command Create(UserConsole console) => new(
        "display", "Show the session of a station on a monitor of this machine: of the same data folder, or (--server) of a host elsewhere.")
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
        var server = ServerOption.Create("Follow a host on another machine instead of the data folder, as http://10.0.0.5:5271.");
        var tokenFile = new Option<string?>("--token-file")
        {
            Description = $"A file that holds this display's token and nothing else; without it {DisplayTokenSource.Variable}, or the token that was asked for once and kept.",
            HelpName = "FILE",
        };
        var output = new Option<string?>("--out") { Description = "Write every frame as a PNG picture into this folder instead of showing it; needs no screen.", HelpName = "DIR" };
        var size = SizeOption.Create();
        var command = new Command(name, $"{description} Escape closes it; Backspace clears the last result.") { station, monitor, windowed, theme, server, tokenFile, output, size };
        command.Validators.Add(result =>
        {
            if (result.GetValue(windowed) && result.GetValue(monitor) is not null)
            {
                result.AddError("--monitor, --windowed: give one of them; a window can be moved to any monitor by hand");
            }

            if (result.GetResult(tokenFile) is not null && result.GetResult(server) is null)
            {
                result.AddError("--token-file: goes with --server; a display of this machine's own data folder needs no token");
            }

            if (result.GetResult(output) is not null && (result.GetValue(windowed) || result.GetValue(monitor) is not null))
            {
                result.AddError("--out: leave --monitor and --windowed out; the frames go into files");
            }

            if (result.GetResult(size) is { Implicit: false } && result.GetResult(output) is null)
            {
                result.AddError("--size: goes with --out; a window has the size of its monitor, or the one that it is given by hand");
            }
        });
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var colours = DisplayThemes.Read(parsed.GetValue(theme));
            var wish = new DisplayWish(kind, parsed.GetValue(monitor), parsed.GetValue(windowed));
            var maps = new DisplayMaps(DataPlace.Of(parsed), parsed.GetValue(station), console.Error.WriteLine);
            var source = Source(console, parsed, kind, parsed.GetValue(station), parsed.GetValue(server), parsed.GetValue(tokenFile));
            var contents = DisplayContents.Of(maps, colours, TimeProvider.System);
            if (parsed.GetValue(output) is { } folder)
            {
                return await WriteAsync(console, wish, contents, parsed.GetValue(station), Path.GetFullPath(folder), parsed.GetValue(size), source, cancellationToken).ConfigureAwait(false);
            }

            Darkness? dark = null;
            await using var windows = await DisplayWindows.OpenAsync(
                console, parsed.GetValue(station), [wish], contents, mayCoverPrimary: true, console.Error.WriteLine, source.StopFolder, all =>
                {
                    dark = source.PartOf(all);
                    return Task.CompletedTask;
                }).ConfigureAwait(false);
            if (windows.Problem is { } problem)
            {
                throw new UserException(problem, ExitCodes.Failed);
            }

            await source.FollowAsync(windows.News, dark!, windows.Closed, cancellationToken).ConfigureAwait(false);
            return windows.Closed.IsCompleted ? await windows.Closed.ConfigureAwait(false) : ExitCodes.Ok;
        });
        return command;
    }

    private static DisplaySource Source(UserConsole console, ParseResult parsed, DisplayKind kind, int station, Uri? server, string? tokenFile)
    {
        if (server is null)
        {
            return DisplaySource.OfRecord(() => StoreForReading.Open(parsed), DataPlace.Named(parsed), DataPlace.Of(parsed), station, console.Error.WriteLine);
        }

        var screen = kind == DisplayKind.Overhead ? ScreenKind.Overhead : ScreenKind.Projector;
        var token = DisplayTokenSource.Find(console, DataPlace.Of(parsed), tokenFile, server, station, screen);
        return DisplaySource.OfHost(new DisplayHost(server, station, screen, token), DataPlace.Of(parsed), console.Error.WriteLine);
    }

    private static async Task<int> WriteAsync(
        UserConsole console, DisplayWish wish, Func<DisplayWish, NewsSlot, IWindowContent> contents, int station, string folder, PictureSize size, DisplaySource source,
        CancellationToken cancellationToken)
    {
        UserFiles.CreateFolder(folder);
        using var files = new DisplayFiles(station);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var dark = source.PartOf(files.Dark);
        var looking = source.LookAtStopAsync(files.Dark.Part(), stop.Token);
        var drawing = console.MainThread.DoAsync(() => files.Run(
            new DarkenedContent(contents(wish, files.News), files.Dark, wish.Kind != DisplayKind.Overhead, ThemeLibrary.Default), size, folder, console.Out.WriteLine, stop.Token));
        try
        {
            await source.FollowAsync(files.News, dark, drawing, cancellationToken).ConfigureAwait(false);
        }
        finally
        {
            await stop.CancelAsync().ConfigureAwait(false);
            await looking.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }

        return await drawing.ConfigureAwait(false);
    }
}
